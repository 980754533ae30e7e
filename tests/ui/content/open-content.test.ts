import { isHttpError } from '@sveltejs/kit';
import { describe, expect, test } from 'vitest';
import { catalogueOf } from '#engine/compile/catalogue.ts';
import { toText } from '#engine/compile/transport.ts';
import { currentRevision, openCatalogue, openMethod } from '#ui/content/open-content.ts';
import { tinyBundle, tinyContent } from '../tiny-content.ts';

/** A server of the small content, with its own signal. */
const serving =
  (answers: Readonly<Record<string, Response>>): typeof fetch =>
  (address) => {
    const path = (address as string).split('?')[0] ?? '';
    const answer = answers[path];
    return answer ? Promise.resolve(answer) : Promise.reject(new TypeError('Failed to fetch'));
  };

const statusOf = (opening: Promise<unknown>): Promise<number> =>
  opening.then(
    () => 200,
    (thrown: unknown) => {
      if (isHttpError(thrown)) return thrown.status;
      throw thrown;
    },
  );

describe('truth', () => {
  test('a method arrives as it was compiled, its quantities exact', async () => {
    const fetch = serving({ '/content/r1/methods/tiny-wall': new Response(toText(tinyBundle)) });
    expect(await openMethod(fetch, 'r1', 'tiny-wall')).toEqual(tinyBundle);
  });

  test('the catalogue names every method without its steps', async () => {
    const catalogue = catalogueOf(tinyContent);
    const fetch = serving({ '/content/r1/catalogue': new Response(toText(catalogue)) });
    expect(await openCatalogue(fetch, 'r1')).toEqual(catalogue);
    expect(catalogue.methods.map(({ id, steps }) => [id, steps])).toEqual([['tiny-wall', 3]]);
  });

  test('without signal there is no revision, and pages answer 503 rather than nothing', async () => {
    const silent = serving({});
    expect(await currentRevision(silent)).toBeUndefined();
    expect(await statusOf(openCatalogue(silent, undefined))).toBe(503);
    expect(await statusOf(openCatalogue(silent, 'r1'))).toBe(503);
  });

  test('a method that is not there is 404, a failing server 503', async () => {
    const none = serving({ '/content/r1/methods/x': new Response('', { status: 404 }) });
    const failing = serving({ '/content/r1/methods/x': new Response('', { status: 500 }) });
    expect(await statusOf(openMethod(none, 'r1', 'x'))).toBe(404);
    expect(await statusOf(openMethod(failing, 'r1', 'x'))).toBe(503);
  });
});
