import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { depthOf, jsonBody, mostFor, usualBytes } from '#server/access/body.ts';
import { whereNotJson } from '#server/access/json-place.ts';

const post = (body: BodyInit, type = 'application/json') =>
  new Request('http://localhost/', {
    method: 'POST',
    body,
    headers: { 'content-type': type },
    // For a body that comes in parts.
    duplex: 'half',
  } as RequestInit);

const nested = (depth: number) => '['.repeat(depth) + ']'.repeat(depth);
const codeOf = async (request: Request, limits = {}) => {
  const read = await jsonBody(request, limits);
  return read.ok ? 'ok' : `${read.error.status} ${read.error.code}`;
};

/** A body of unknown length, in parts; counts how many were taken. */
function inParts(part: string, count: number) {
  let taken = 0;
  const stream = new ReadableStream<Uint8Array>({
    pull: (controller) => {
      taken += 1;
      if (taken > count) controller.close();
      else controller.enqueue(new TextEncoder().encode(part));
    },
  });
  return { stream, taken: () => taken };
}

describe('truth', () => {
  test('what is JSON is read, whatever the charset is called', async () => {
    const read = await jsonBody(post('{"a":[1,"ñ"]}', 'application/json; charset=utf-8'));
    expect(read).toEqual({ ok: true, value: { a: [1, 'ñ'] } });
  });

  test.each([
    ['as deep as may be', nested(40), 'ok'],
    ['one deeper', nested(41), '400 TOO_DEEP'],
    ['a text of brackets', `"${nested(50)}"`, 'ok'],
    ['a text of brackets after a quote', `["\\"${'['.repeat(50)}"]`, 'ok'],
    ['no value', '{"a":}', '400 NOT_JSON'],
    ['nothing', '', '400 NOT_JSON'],
    ['as long as may be', ' '.repeat(usualBytes - 1) + '1', 'ok'],
    ['one sign longer', ' '.repeat(usualBytes) + '1', '413 TOO_LARGE'],
  ])('%s is answered', async (_, text, answer) => {
    expect(await codeOf(post(text))).toBe(answer);
  });

  test('another type of content and another encoding are told', async () => {
    expect(await codeOf(post('{}', 'text/plain'))).toBe('415 WRONG_TYPE');
    expect(await codeOf(post('a=1', 'application/x-www-form-urlencoded'))).toBe('415 WRONG_TYPE');
    expect(await codeOf(post(new Uint8Array([0x22, 0xff, 0x22])))).toBe('400 NOT_UTF8');
  });

  test('a body that does not say its length is read no further than it may be', async () => {
    const { stream, taken } = inParts(' '.repeat(1024), 1_000_000);
    expect(await codeOf(post(stream), { most: 10 * 1024 })).toBe('413 TOO_LARGE');
    expect(taken()).toBeLessThan(20);
  });

  test('attempts come in bulk, a roster and certificates as a file, the rest is small', () => {
    expect(mostFor('/company/[company]/attempts')).toBe(2 * 1024 * 1024);
    expect(mostFor('/company/[company]/people/import')).toBe(3 * 1024 * 1024);
    expect(mostFor('/company/[company]/board/declared')).toBe(3 * 1024 * 1024);
    expect(mostFor('/sign-in')).toBe(64 * 1024);
    expect(mostFor(null)).toBe(64 * 1024);
  });

  test.each([
    ['{\n  "a": 1,\n  b: 2\n}', 3, 3, 'a name in double quotes'],
    ['{"a": 1,}', 1, 9, 'a name in double quotes'],
    ['[1 2]', 1, 4, 'a comma or a closing bracket'],
    ['[1,', 1, 4, 'a value'],
    ['{"a" 1}', 1, 6, 'a colon'],
    ['[01]', 1, 2, 'a value or ]'],
    ['1 1', 1, 3, 'nothing more'],
    ['["a\nb"]', 1, 2, 'a value or ]'],
    ['[}', 1, 2, 'a value or ]'],
  ])(
    '%j stops being JSON at line %i, column %i, where %s should be',
    (text, line, column, what) => {
      expect(whereNotJson(text)).toEqual({ line, column, expected: what });
    },
  );
});

describe('laws', () => {
  test('what JSON writes is JSON, and one bracket, comma or quote put in is found as the platform finds it', () => {
    const marks = fc.constantFrom('{', '}', '[', ']', ',', ':', '"', 'x', '0', '-');
    fc.assert(
      fc.property(fc.json(), marks, fc.nat(), (text, mark, at) => {
        expect(whereNotJson(text)).toBeUndefined();
        const place = at % (text.length + 1);
        const spoilt = text.slice(0, place) + mark + text.slice(place);
        let isJson = true;
        try {
          JSON.parse(spoilt);
        } catch {
          isJson = false;
        }
        expect(whereNotJson(spoilt) === undefined).toBe(isJson);
      }),
      { numRuns: 2000 },
    );
  });

  test('depth is counted as a walk through the value counts it', () => {
    const walk = (value: unknown): number =>
      typeof value === 'object' && value !== null
        ? 1 + Math.max(0, ...Object.values(value).map(walk))
        : 0;
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(depthOf(JSON.stringify(value))).toBe(walk(value));
      }),
    );
  });
});
