import { globSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { contentParts } from '#ui/content/content-parts.ts';
import { isKeptPage } from '#ui/offline/kept-pages.ts';
import { tinyContent } from '../tiny-content.ts';

/** Pages that need the server each time they are opened. */
const serverPages = /^\/(account|card|company|shell|sign-in|start|verify)(\/|$)/;

const routes = globSync('**/+page.svelte', { cwd: 'src/routes' }).map(
  (file) => `/${file.replaceAll('\\', '/').replace(/\/?\+page\.svelte$/, '')}`,
);

describe('laws', () => {
  test.each(routes)('%s opens without signal, or is listed as a page of the server', (route) => {
    expect(isKeptPage(route)).toBe(!serverPages.test(route));
  });

  test('a file that the server makes is no page', () => {
    const made = globSync('src/routes/**/*.pdf').map((path) => path.replaceAll('\\', '/'));
    expect(made.map((path) => path.replace('src/routes', ''))).toContain('/takeoff/worksheet.pdf');
    for (const path of made) expect(isKeptPage(path.replace('src/routes', ''))).toBe(false);
  });

  test.each(routes.filter(isKeptPage))('%s asks nothing of the server but content', (route) => {
    const above = route.split('/').map((_, depth, names) => names.slice(0, depth + 1).join('/'));
    const files = above.flatMap((at) => globSync(`src/routes${at}/+{page,layout}.server.ts`));
    expect(files).toEqual([]);
  });

  test('every address of content is that of a part that browsers keep', () => {
    const folder = 'src/routes/content/[[]revision[]]';
    const served = globSync(`${folder}/**/+server.ts`)
      .map((file) => file.replaceAll('\\', '/'))
      .map((file) => file.replace(/^.*\[revision\]\/(.*)\/\+server\.ts$/, '$1'));
    const kept = contentParts(tinyContent).map((part) => part.replace(/\/.*/, '/[id]'));
    expect(served.length).toBeGreaterThan(0);
    expect(new Set(kept)).toEqual(new Set(served));
  });
});
