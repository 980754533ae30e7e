import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { isAt } from './pictures/screen.ts';
import { screens, withoutPicture } from './pictures/screens.ts';

const routes = join(import.meta.dirname, '../../src/routes');

/** Every address that a page is drawn at, as its folder is named. */
const pages = readdirSync(routes, { recursive: true, encoding: 'utf8' })
  .map((file) => file.replaceAll('\\', '/'))
  .filter((file) => /(^|\/)\+page\.svelte$/.test(file))
  .map((file) => `/${file.replace(/\/?\+page\.svelte$/, '')}`);

const shown = new Set(screens.map(({ route, leadsTo }) => leadsTo ?? route));

describe('the pictures of screens', () => {
  test('every page has a picture, or the reason why it has none', () => {
    expect(pages.length).toBeGreaterThan(50);
    expect(pages.filter((page) => !shown.has(page) && !(page in withoutPicture))).toEqual([]);
  });

  test('no picture is of a page that is not there, and no reason of one that has a picture', () => {
    expect([...shown].filter((route) => !pages.includes(route))).toEqual([]);
    const reasons = Object.keys(withoutPicture);
    expect(reasons.filter((route) => shown.has(route) || !pages.includes(route))).toEqual([]);
  });

  test('no two go by one name', () => {
    const names = screens.map(({ name }) => name);
    expect(names.filter((name, place) => names.indexOf(name) !== place)).toEqual([]);
  });

  test('an address is told from one that it only begins like', () => {
    expect(isAt('/company/[company]', '/company/1')).toBe(true);
    expect(isAt('/company/[company]', '/company/1/board')).toBe(false);
    expect(isAt('/company/[company]/board', '/sign-in')).toBe(false);
  });
});
