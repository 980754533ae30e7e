import { describe, expect, test } from 'vitest';
import { answerTo, type Answer } from '#ui/offline/answer.ts';

const origin = 'https://walls.example';
const files = new Set(['/icon-192.png', '/icon.svg', '/en.webmanifest']);

const answer = (
  address: string,
  asked: { readonly method?: string; readonly mode?: RequestMode } = {},
): Answer =>
  answerTo(
    { method: 'GET', mode: 'cors', ...asked, url: new URL(address, origin).href },
    origin,
    files,
  );

describe('truth', () => {
  test.each([
    '/',
    '/practise',
    '/practise/base-of-wall?seed=3&mode=own',
    '/methods/window-sill?backing=wood#step',
    '/glossary',
    '/search?q=seam',
    '/attempts/0123',
  ])('%s is a page that opens from the shell', (address) => {
    expect(answer(address, { mode: 'navigate' })).toBe('shell');
  });

  test.each(['/shell', '/verify/0123', '/practised', '/no-such-sheet'])(
    '%s is a page that the server is asked for',
    (address) => {
      expect(answer(address, { mode: 'navigate' })).toBe('server');
    },
  );

  test('files of the app and parts of the content come from what is kept', () => {
    expect(answer('/_app/immutable/chunks/a1b2.js')).toBe('kept');
    expect(answer('/icon-192.png')).toBe('kept');
    expect(answer('/content/r1/methods/base-of-wall?build=7')).toBe('kept');
  });

  test('which content and which build are current is answered with those in use', () => {
    expect(answer('/content/current')).toBe('current');
    expect(answer('/_app/version.json')).toBe('build');
  });

  test('a file that is opened like a page is a file', () => {
    expect(answer('/icon.svg', { mode: 'navigate' })).toBe('kept');
  });
});

describe('laws', () => {
  test.each(['POST', 'PUT', 'DELETE', 'PATCH', 'HEAD'])('%s is left alone everywhere', (method) => {
    for (const address of [
      '/',
      '/practise',
      '/icon-192.png',
      '/content/current',
      '/api/attempts',
    ]) {
      expect(answer(address, { method })).toBe('leave');
    }
  });

  test('other sites and addresses of no page are left alone', () => {
    expect(answer('https://elsewhere.example/icon-192.png')).toBe('leave');
    expect(answer('https://elsewhere.example/', { mode: 'navigate' })).toBe('leave');
    expect(answer('/api/attempts')).toBe('leave');
    expect(answer('/contents')).toBe('leave');
  });
});
