import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { browserStore } from '#ui/attempts/browser-store.ts';
import { Outbox } from '#ui/sending/outbox.svelte.ts';
import { stateWords } from '#ui/sending/sending-words.ts';
import { companyServer } from './company-server.ts';

const ana = { company: 'c1', person: 'ana' };
const bo = { company: 'c1', person: 'bo' };

let server: Awaited<ReturnType<typeof companyServer>>;
let isCut = false;
let turn: Promise<void> = Promise.resolve();

/** As browsers lock among their windows: one after the other. */
const alone = (act: () => Promise<void>): Promise<void> => {
  turn = turn.then(act);
  return turn;
};

/** Node's fetch does not know the signals of jsdom. */
const ask: typeof fetch = (address, how) =>
  isCut
    ? Promise.reject(new TypeError('Failed to fetch'))
    : fetch(`${server.address}${address as string}`, { ...how, signal: null });

const opened = (): Outbox => {
  const outbox = new Outbox({ store: browserStore, fetch: ask, alone });
  outbox.recall();
  return outbox;
};

const build = (id: string, more: object = {}) =>
  localStorage.setItem(`attempt/${id}`, JSON.stringify({ id, score: 90, ...more }));

/** Finishes a wall as somebody at this device does. */
const finish = (outbox: Outbox, id: string, more: object = {}) => {
  build(id, more);
  outbox.finished('mockup', id);
};

/** Sends until nothing is under way any more. */
const settle = async (outbox: Outbox) => {
  await outbox.send();
  await turn;
};

const sentIds = () => server.received.flatMap(({ ids }) => ids);

beforeEach(async () => {
  localStorage.clear();
  isCut = false;
  server = await companyServer();
});
afterEach(() => server.stop());

describe('truth', () => {
  test('what is finished while signed in is sent at once, with its work, and marked by the server', async () => {
    server.state.signedIn = ana;
    const outbox = opened();
    await settle(outbox);
    finish(outbox, 'a');
    await settle(outbox);
    expect([...server.kept]).toEqual([['a', 'ana']]);
    expect(outbox.markOf('a')).toMatchObject({ state: 'sent', score: 80 });
    expect(stateWords(outbox)).toBe('All sent');
  });

  test('without signal it waits, survives a reload, and is sent once', async () => {
    server.state.signedIn = ana;
    const before = opened();
    await settle(before);
    isCut = true;
    for (const id of ['a', 'b', 'c']) finish(before, id);
    await settle(before);
    expect(stateWords(before)).toBe('3 wait for signal');
    const after = opened();
    isCut = false;
    await settle(after);
    await settle(after);
    expect(sentIds().toSorted()).toEqual(['a', 'b', 'c']);
    expect(stateWords(after)).toBe('All sent');
  });

  test('who was never signed in is told nothing, and nothing is sent', async () => {
    const outbox = opened();
    finish(outbox, 'a');
    await settle(outbox);
    expect(stateWords(outbox)).toBeUndefined();
    expect(server.received).toEqual([]);
  });

  test('what was made before signing in is sent only after a yes', async () => {
    const outbox = opened();
    finish(outbox, 'a');
    build('b');
    server.state.signedIn = ana;
    await settle(outbox);
    expect(outbox.unclaimed.map(({ id }) => id).toSorted()).toEqual(['a', 'b']);
    expect(server.received).toEqual([]);
    outbox.claim(true);
    await settle(outbox);
    expect(sentIds().toSorted()).toEqual(['a', 'b']);
    expect(outbox.unclaimed).toEqual([]);
  });

  test('after a no it is not asked again, but of the next person it is', async () => {
    const outbox = opened();
    build('a');
    server.state.signedIn = ana;
    await settle(outbox);
    outbox.claim(false);
    await settle(outbox);
    expect(opened().unclaimed).toEqual([]);
    server.state.signedIn = bo;
    await settle(outbox);
    expect(outbox.unclaimed.map(({ id }) => id)).toEqual(['a']);
    expect(server.received).toEqual([]);
  });

  test('somebody else on the same device does not send the first one’s', async () => {
    server.state.signedIn = ana;
    const outbox = opened();
    await settle(outbox);
    isCut = true;
    finish(outbox, 'a');
    await settle(outbox);
    isCut = false;
    server.state.signedIn = bo;
    await settle(outbox);
    expect(server.received).toEqual([]);
    expect(outbox.unclaimed).toEqual([]);
    server.state.signedIn = ana;
    await settle(outbox);
    expect(server.received).toEqual([{ by: 'ana', ids: ['a'] }]);
  });

  test('what waits when the session has ended asks for signing in', async () => {
    server.state.signedIn = ana;
    const outbox = opened();
    await settle(outbox);
    isCut = true;
    finish(outbox, 'a');
    await settle(outbox);
    isCut = false;
    server.state.signedIn = undefined;
    await settle(outbox);
    expect(stateWords(outbox)).toBe('Sign in to send 1');
    expect(outbox.markOf('a')).toMatchObject({ state: 'waiting' });
  });

  test('many go in batches of twenty', async () => {
    server.state.signedIn = ana;
    const outbox = opened();
    await settle(outbox);
    isCut = true;
    for (let n = 0; n < 45; n += 1) finish(outbox, `a${n}`);
    await settle(outbox);
    isCut = false;
    await settle(outbox);
    expect(server.received.map(({ ids }) => ids.length)).toEqual([20, 20, 5]);
  });

  test('one that is refused is told with its reason, and kept or dropped', async () => {
    server.state.signedIn = ana;
    server.state.refused = new Set(['a', 'b']);
    const outbox = opened();
    await settle(outbox);
    for (const id of ['a', 'b', 'c']) finish(outbox, id);
    await settle(outbox);
    expect(outbox.refused.map(({ id }) => id).toSorted()).toEqual(['a', 'b']);
    expect(stateWords(outbox)).toBe('2 were not taken');
    outbox.keepHere('a');
    outbox.drop(outbox.refused.find(({ id }) => id === 'b')!);
    await settle(outbox);
    expect(localStorage.getItem('attempt/a')).not.toBeNull();
    expect(localStorage.getItem('attempt/b')).toBeNull();
    expect(
      sentIds()
        .filter((id) => id !== 'c')
        .toSorted(),
    ).toEqual(['a', 'b']);
    expect(stateWords(opened())).toBe('All sent');
  });

  test.each([500, 503, 429, 403, 404])('a server that answers %i loses nothing', async (status) => {
    server.state.signedIn = ana;
    const outbox = opened();
    await settle(outbox);
    server.state.status = status;
    finish(outbox, 'a');
    await settle(outbox);
    expect(stateWords(outbox)).toBe('1 waits for the server');
    server.state.status = 0;
    await settle(outbox);
    expect([...server.kept.keys()]).toEqual(['a']);
  });

  test('one that is too large alone is refused, and stops no other', async () => {
    server.state.signedIn = ana;
    const outbox = opened();
    await settle(outbox);
    server.state.status = 413;
    finish(outbox, 'a');
    await settle(outbox);
    expect(outbox.refused).toMatchObject([{ id: 'a', mark: { why: [{ code: 'TOO_LARGE' }] } }]);
  });

  test('a problem is sent when it is finished, and not before', async () => {
    server.state.signedIn = ana;
    const outbox = opened();
    localStorage.setItem('takeoff/t', JSON.stringify({ id: 't' }));
    await settle(outbox);
    expect(server.received).toEqual([]);
    outbox.finished('takeoff', 't');
    await settle(outbox);
    expect(sentIds()).toEqual(['t']);
  });
});

describe('laws', () => {
  test('two windows that send at once send each attempt once', async () => {
    server.state.signedIn = ana;
    const [one, other] = [opened(), opened()];
    await settle(one);
    isCut = true;
    for (let n = 0; n < 30; n += 1) finish(one, `a${n}`);
    await settle(one);
    isCut = false;
    await Promise.all([one.send(), other.send(), one.send(), other.send()]);
    expect(sentIds()).toHaveLength(30);
    expect(new Set(sentIds()).size).toBe(30);
  });
});
