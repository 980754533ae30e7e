/**
 * What a person waits for, measured in a real browser on the built app:
 *
 *   npm run measure             all of it
 *   npm run measure -- placing  one part: placing, pages, board
 *
 * Fails when something is over its bound. Other work on the machine makes every figure worse: the load
 * stands beside them.
 */
import { chromium } from '@playwright/test';
import { measureBoard } from './board.ts';
import { conditions } from './figures.ts';
import { launch } from './launch.ts';
import { measurePages } from './pages.ts';
import { measurePlacing } from './placing.ts';
import { serve } from './site.ts';

const parts = { placing: measurePlacing, pages: measurePages, board: measureBoard };

const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !(name in parts));
if (unknown.length > 0) {
  console.error(
    `Nothing is measured under ${unknown.join(', ')}: ${Object.keys(parts).join(', ')}.`,
  );
  process.exit(2);
}

const site = await serve();
const browser = await chromium.launch(launch);
console.log(conditions(browser.version()));
try {
  for (const [name, measure] of Object.entries(parts)) {
    if (wanted.length > 0 && !wanted.includes(name)) continue;
    console.log('');
    if (!(await measure(browser, site))) process.exitCode = 1;
  }
  console.log(`\n${conditions(browser.version())}`);
} finally {
  await browser.close();
  await site.stop();
}
