import { gunzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { pageAnswer } from '#server/page-answer.ts';

const text = '<!doctype html><title>Señal</title>';
const page = () =>
  new Response(text, { status: 404, headers: { 'content-type': 'text/html', etag: '"1a"' } });
const asking = (encodings?: string) =>
  new Headers(encodings === undefined ? {} : { 'accept-encoding': encodings });

describe('truth', () => {
  test.each(['gzip', 'br, gzip;q=0.8', 'deflate, GZIP'])(
    'who takes %s gets it packed',
    async (encodings) => {
      const answer = pageAnswer(asking(encodings), page(), false);
      expect(answer.headers.get('content-encoding')).toBe('gzip');
      expect(answer.headers.get('vary')).toBe('accept-encoding');
      expect(answer.headers.get('etag')).toBe('W/"1a"');
      expect(answer.status).toBe(404);
      expect(gunzipSync(await answer.arrayBuffer()).toString('utf8')).toBe(text);
    },
  );

  test.each([undefined, 'br', 'gzip;q=0', 'identity'])(
    'who takes %s gets it as it is',
    async (encodings) => {
      const answer = pageAnswer(asking(encodings), page(), false);
      expect(answer.headers.has('content-encoding')).toBe(false);
      expect(await answer.text()).toBe(text);
    },
  );

  test('who is signed in gets it as it is', () => {
    expect(pageAnswer(asking('gzip'), page(), true).headers.has('content-encoding')).toBe(false);
  });

  test('a page names its character set, and nothing else is touched', () => {
    expect(pageAnswer(asking(), page(), false).headers.get('content-type')).toBe(
      'text/html; charset=utf-8',
    );
    const file = Response.json({});
    expect(pageAnswer(asking('gzip'), file, false)).toBe(file);
  });
});
