/**
 * What a person waits for, measured in a real browser on the built app:
 *
 *   npm run measure             all of it
 *   npm run measure -- placing  one part: placing, pages, board
 *   npm run measure -- pages exam  of the pages those whose name holds a word
 *
 * Fails when something is over its bound. Other work on the machine makes every figure worse: the load
 * stands beside them.
 */
import { type Browser, chromium } from '@playwright/test';
import { measureBoard } from './board.ts';
import { conditions } from './figures.ts';
import { launch } from './launch.ts';
import { measurePages } from './pages.ts';
import { measurePlacing } from './placing.ts';
import { serve, type Site } from './site.ts';

type Measure = (browser: Browser, site: Site, words: readonly string[]) => Promise<boolean>;

const parts: Readonly<Record<string, Measure>> = {
  placing: measurePlacing,
  pages: measurePages,
  board: measureBoard,
};

const asked = process.argv.slice(2);
const wanted = asked.filter((name) => name in parts);
const words = asked.filter((name) => !(name in parts));
if (words.length > 0 && !wanted.includes('pages')) {
  console.error(`Nothing is measured under ${words.join(', ')}: ${Object.keys(parts).join(', ')}.`);
  process.exit(2);
}

const site = await serve();
const browser = await chromium.launch(launch);
console.log(conditions(browser.version()));
try {
  for (const [name, measure] of Object.entries(parts)) {
    if (wanted.length > 0 && !wanted.includes(name)) continue;
    console.log('');
    if (!(await measure(browser, site, words))) process.exitCode = 1;
  }
  console.log(`\n${conditions(browser.version())}`);
} finally {
  await browser.close();
  await site.stop();
}
