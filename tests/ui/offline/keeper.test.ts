import { describe, expect, test } from 'vitest';
import { shelfOf, usedShelf } from '#ui/offline/edition.ts';
import { Keeper } from '#ui/offline/keeper.ts';
import { cachesInMemory } from './caches-in-memory.ts';

const first = { build: 'b1', revision: 'r1' };
const revised = { build: 'b1', revision: 'r2' };
const rebuilt = { build: 'b2', revision: 'r2' };

const hashed = '/_app/immutable/chunks/x.js';
const addresses = ['/shell', hashed, '/content/r1/search?build=b1'];

/** A server that says which address and which request of it this was, and can lose its signal. */
function server() {
  const asked: string[] = [];
  const state = { lost: '' };
  const fetch = (address: string): Promise<Response> => {
    asked.push(address);
    return address === state.lost
      ? Promise.reject(new TypeError('Failed to fetch'))
      : Promise.resolve(new Response(`${address} ${asked.length}`));
  };
  return { asked, state, fetch };
}

const textAt = async (keeper: Keeper, address: string) =>
  (await keeper.find(address))?.text() ?? Promise.resolve(undefined);

describe('truth', () => {
  test('nothing is in use before a whole edition is taken', async () => {
    const { fetch } = server();
    const keeper = new Keeper(cachesInMemory(), fetch);
    expect(await keeper.standing('b1')).toEqual({ used: undefined, ready: undefined });
    expect(await keeper.find('/shell')).toBeUndefined();
    await keeper.keep(first, addresses);
    expect(await keeper.standing('b1')).toEqual({ used: undefined, ready: first });
    expect(await keeper.find('/shell')).toBeUndefined();
    expect(await keeper.use(first)).toBe(true);
    expect(await keeper.standing('b1')).toEqual({ used: first, ready: undefined });
    expect(await textAt(keeper, '/shell')).toBe('/shell 1');
  });

  test('a newer edition changes nothing until it is taken', async () => {
    const caches = cachesInMemory();
    const { fetch } = server();
    const keeper = new Keeper(caches, fetch);
    await keeper.keep(first, addresses);
    await keeper.use(first);
    const before = await textAt(keeper, '/shell');

    await keeper.keep(revised, addresses);
    expect(await keeper.standing('b1')).toEqual({ used: first, ready: revised });
    expect(await textAt(keeper, '/shell')).toBe(before);

    expect(await keeper.use(revised)).toBe(true);
    expect(await keeper.standing('b1')).toEqual({ used: revised, ready: undefined });
    expect(await textAt(keeper, '/shell')).not.toBe(before);
  });

  test('another window sees what is in use when it starts anew', async () => {
    const caches = cachesInMemory();
    const keeper = new Keeper(caches, server().fetch);
    await keeper.keep(first, addresses);
    await keeper.use(first);
    expect(await new Keeper(caches, server().fetch).used()).toEqual(first);
  });

  test('a file named after its content is copied, not fetched again; the shell is fetched', async () => {
    const { fetch, asked } = server();
    const keeper = new Keeper(cachesInMemory(), fetch);
    await keeper.keep(first, addresses);
    await keeper.keep(rebuilt, addresses);
    expect(asked.filter((address) => address === hashed)).toHaveLength(1);
    expect(asked.filter((address) => address === '/shell')).toHaveLength(2);
  });

  test('a fetch cut short goes on where it was, and is not taken for whole', async () => {
    const { fetch, asked, state } = server();
    const keeper = new Keeper(cachesInMemory(), fetch);
    state.lost = hashed;
    await expect(keeper.keep(first, addresses)).rejects.toThrow('Failed to fetch');
    expect(await keeper.use(first)).toBe(false);
    expect((await keeper.standing('b1')).ready).toBeUndefined();

    state.lost = '';
    await keeper.keep(first, addresses);
    expect(await keeper.use(first)).toBe(true);
    expect(asked.filter((address) => address === '/shell')).toHaveLength(1);
  });

  test.each([
    ['an error', () => new Response('', { status: 500 }), '/shell was answered with 500'],
    [
      'content of another revision',
      () => Object.defineProperty(new Response('other'), 'redirected', { value: true }),
      '/shell was answered with 200',
    ],
  ])('%s is not kept', async (_, answer, told) => {
    const keeper = new Keeper(cachesInMemory(), () => Promise.resolve(answer()));
    await expect(keeper.keep(first, ['/shell'])).rejects.toThrow(told);
    expect(await keeper.use(first)).toBe(false);
  });

  test('taking an edition removes all others of ours and nothing of anybody else', async () => {
    const caches = cachesInMemory();
    const keeper = new Keeper(caches, server().fetch);
    await caches.open('underlap/from-years-ago');
    await caches.open('photographs');
    for (const edition of [first, revised, rebuilt]) await keeper.keep(edition, addresses);
    await keeper.use(rebuilt);
    expect((await caches.keys()).toSorted()).toEqual(
      ['photographs', shelfOf(rebuilt), usedShelf].toSorted(),
    );
  });

  test('the newest takes the place of one that waited; the one in use stays', async () => {
    const caches = cachesInMemory();
    const keeper = new Keeper(caches, server().fetch);
    await keeper.keep(first, addresses);
    await keeper.use(first);
    await keeper.keep(revised, addresses);
    await keeper.keep(rebuilt, addresses);
    await keeper.tidy(rebuilt);
    const names = await caches.keys();
    expect(names).toContain(shelfOf(first));
    expect(names).not.toContain(shelfOf(revised));
    expect(await keeper.standing('b2')).toEqual({ used: first, ready: rebuilt });
  });

  test('a keeper offers nothing of a build other than its own', async () => {
    const keeper = new Keeper(cachesInMemory(), server().fetch);
    await keeper.keep(rebuilt, addresses);
    expect((await keeper.standing('b3')).ready).toBeUndefined();
  });

  test('an edition that the browser dropped for room is not in use', async () => {
    const caches = cachesInMemory();
    const keeper = new Keeper(caches, server().fetch);
    await keeper.keep(first, addresses);
    await keeper.use(first);
    await caches.delete(shelfOf(first));
    expect(await new Keeper(caches, server().fetch).used()).toBeUndefined();
  });
});
