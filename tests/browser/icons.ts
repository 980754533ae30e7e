/**
 * Draws the icons of the installed app from `static/icon.svg`, where browsers ask for pixels:
 *
 *   npm run icons
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { chromium } from '@playwright/test';
import { launch } from './launch.ts';

const folder = new URL('../../static/', import.meta.url);
const drawn = readFileSync(new URL('icon.svg', folder), 'utf8');
const paper = /fill="(#\w+)"/.exec(drawn)?.[1] ?? '';

// Phones cut their own shape out of a maskable icon: what counts stays within four fifths of it.
const icons = [
  { file: 'icon-180.png', pixels: 180, share: 0.86 },
  { file: 'icon-192.png', pixels: 192, share: 1 },
  { file: 'icon-512.png', pixels: 512, share: 1 },
  { file: 'icon-maskable-512.png', pixels: 512, share: 0.72 },
];

const browser = await chromium.launch(launch);
for (const { file, pixels, share } of icons) {
  const page = await browser.newPage({ viewport: { width: pixels, height: pixels } });
  await page.setContent(
    `<style>body{margin:0;height:100vh;display:grid;place-items:center;background:${paper}}` +
      `svg{width:${share * 100}vw}</style>${drawn}`,
  );
  writeFileSync(new URL(file, folder), await page.screenshot());
  await page.close();
  console.log(`${file}: ${pixels} x ${pixels}`);
}
await browser.close();
