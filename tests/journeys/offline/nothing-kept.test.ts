import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, expect } from '@playwright/test';
import { launch } from '../../browser/launch.ts';
import { haveInspected, putUpFirst, test } from './parts.ts';

// Chromium's own setting for "block all cookies", which also denies storage, caches and workers.
const blocked = { profile: { default_content_setting_values: { cookies: 2 } } };

test('where the browser keeps nothing the app works, and says that it will not open without signal', async ({
  site,
}) => {
  test.slow();
  const profile = mkdtempSync(join(tmpdir(), 'underlap-browser-'));
  mkdirSync(join(profile, 'Default'));
  writeFileSync(join(profile, 'Default/Preferences'), JSON.stringify(blocked));
  // The whole browser: the bare one has no such setting.
  const context = await chromium.launchPersistentContext(profile, {
    channel: 'chromium',
    ...launch,
    locale: 'en-US',
    viewport: { width: 360, height: 740 },
    serviceWorkers: 'allow',
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));

  await page.goto(site.address);
  const denied = await page.evaluate(() => {
    try {
      return localStorage.length;
    } catch (error) {
      return (error as Error).name;
    }
  });
  expect(denied).toBe('SecurityError');
  await expect(page.getByRole('contentinfo')).toContainText('this browser keeps nothing');

  await page.goto(`${site.address}/practise/base-of-wall?mode=own&seed=4`);
  await putUpFirst(page);
  await putUpFirst(page);
  await haveInspected(page);
  expect(complaints).toEqual([]);
  await context.close();
  rmSync(profile, { recursive: true, force: true });
});
