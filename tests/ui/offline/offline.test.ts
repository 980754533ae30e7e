import { describe, expect, test, vi } from 'vitest';
import type { Standing } from '#ui/offline/edition.ts';
import { Offline } from '#ui/offline/offline.svelte.ts';

const own = { build: 'b1', revision: 'r1' };
const newer = { build: 'b2', revision: 'r1' };

/** A browser whose worker answers only when told to. */
function browser() {
  const asked: unknown[] = [];
  const reload = vi.fn();
  const registration = {
    active: { postMessage: (ask: unknown) => asked.push(ask) },
    update: () => Promise.resolve(),
  } as unknown as ServiceWorkerRegistration;
  const target = new EventTarget();
  const workers = Object.assign(target, {
    register: () => Promise.resolve(registration),
    ready: Promise.resolve(registration),
  });
  const offline = new Offline({ workers: () => workers, isSecure: () => true, reload });
  const tell = (data: Standing | string) =>
    target.dispatchEvent(new MessageEvent('message', { data }));
  return { offline, asked, reload, tell };
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 0));

describe('truth', () => {
  test('an edition in use is told as kept', () => {
    const { offline, tell } = browser();
    offline.start(own);
    expect(offline.keeping).toBe('keeping');
    tell({ used: undefined, ready: undefined });
    expect(offline.keeping).toBe('keeping');
    tell({ used: own, ready: undefined });
    expect(offline.keeping).toBe('kept');
    expect(offline.isAnnounced).toBe(false);
  });

  test('the worker is asked how things stand before it looks for more', async () => {
    const { offline, asked } = browser();
    offline.start(own);
    await settled();
    expect(asked).toEqual([{ ask: 'standing' }, { ask: 'look' }]);
  });

  test('something newer is announced, and taken only when somebody says so', async () => {
    const { offline, asked, reload, tell } = browser();
    offline.start(own);
    await settled();
    tell({ used: own, ready: newer });
    expect(offline.isAnnounced).toBe(true);
    expect(reload).not.toHaveBeenCalled();
    expect(asked).not.toContainEqual({ ask: 'use', edition: newer });

    offline.take();
    expect(offline.isTaking).toBe(true);
    expect(asked.at(-1)).toEqual({ ask: 'use', edition: newer });
    tell({ used: own, ready: newer });
    expect(reload).not.toHaveBeenCalled();
    tell({ used: newer, ready: undefined });
    expect(reload).toHaveBeenCalledOnce();
  });

  test('what can no longer be taken is offered no longer', () => {
    const { offline, reload, tell } = browser();
    offline.start(own);
    tell({ used: own, ready: newer });
    offline.take();
    tell({ used: own, ready: undefined });
    expect(offline.isTaking).toBe(false);
    expect(offline.isAnnounced).toBe(false);
    expect(reload).not.toHaveBeenCalled();
  });

  test('nothing is announced while somebody is at work', () => {
    const { offline, tell } = browser();
    offline.start(own);
    const over = offline.hold();
    const alsoOver = offline.hold();
    tell({ used: own, ready: newer });
    expect(offline.isAnnounced).toBe(false);
    over();
    over();
    expect(offline.isAnnounced).toBe(false);
    alsoOver();
    expect(offline.isAnnounced).toBe(true);
  });

  test('a page whose edition another window has left is old, and made anew when taken', () => {
    const { offline, asked, reload, tell } = browser();
    offline.start(own);
    tell({ used: newer, ready: undefined });
    expect(offline.isOld).toBe(true);
    expect(offline.isAnnounced).toBe(true);
    offline.take();
    expect(reload).toHaveBeenCalledOnce();
    expect(asked).not.toContainEqual(expect.objectContaining({ ask: 'use' }));
  });

  test('a page that shows no content is never old', () => {
    const { offline, tell } = browser();
    offline.start(undefined);
    tell({ used: newer, ready: undefined });
    expect(offline.isOld).toBe(false);
  });

  test('what others post changes nothing', () => {
    const { offline, tell } = browser();
    offline.start(own);
    tell('hello');
    expect(offline.keeping).toBe('keeping');
  });

  test('after its end a page hears nothing', () => {
    const { offline, tell } = browser();
    const end = offline.start(own);
    end();
    tell({ used: own, ready: newer });
    expect(offline.isAnnounced).toBe(false);
  });
});

describe('truth: browsers that keep nothing', () => {
  const refusing = (): never => {
    throw new DOMException('denied', 'SecurityError');
  };
  const rejecting = () =>
    Object.assign(new EventTarget(), { register: () => Promise.reject(new TypeError('denied')) });

  const silent = () =>
    Object.assign(new EventTarget(), { register: () => Promise.resolve(undefined) });
  const browsers: readonly (readonly [string, () => unknown, boolean, string])[] = [
    ['has no workers on a plain address', () => undefined, false, 'insecure'],
    ['has no workers at all', () => undefined, true, 'refused'],
    ['throws when asked for them', refusing, true, 'refused'],
    ['refuses to register one', rejecting, true, 'refused'],
    ['registers nothing without a word', silent, true, 'refused'],
  ];

  test.each(browsers)('one that %s is told as %s', async (_, workers, isSecure, told) => {
    const offline = new Offline({
      workers: workers as never,
      isSecure: () => isSecure,
      reload: () => undefined,
    });
    offline.start(own);
    await settled();
    expect(offline.keeping).toBe(told);
    offline.look();
    expect(offline.isAnnounced).toBe(false);
  });
});
