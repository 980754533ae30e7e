/**
 * How a page loads on a slow phone: first and largest contentful paint, what moved afterwards, and how
 * long the main thread kept taps waiting. Network and processor are slowed as Lighthouse slows them for
 * a phone on slow 4G where the browser itself does the slowing:
 * https://github.com/GoogleChrome/lighthouse/blob/main/core/config/constants.js (mobileSlow4G)
 */
import type { CDPSession, Page } from '@playwright/test';

export type Loading = {
  readonly firstPaint: number;
  readonly largestPaint: number;
  /** Layout shift, without a unit. */
  readonly shift: number;
  /** What tasks took beyond 50 ms each, after the first paint. */
  readonly blocked: number;
};

/** What web.dev calls good (https://web.dev/articles/vitals, https://web.dev/articles/tbt). */
export const good: Loading = {
  firstPaint: 1800,
  largestPaint: 2500,
  shift: 0.1,
  blocked: 200,
};

const slowPhone = {
  offline: false,
  latency: 150 * 3.75,
  downloadThroughput: (1.6 * 1024 * 1024 * 0.9) / 8,
  uploadThroughput: (750 * 1024 * 0.9) / 8,
};

const quiet = 3000;

type Kept = { largest: number; shift: number; tasks: { start: number; duration: number }[] };
type Watched = typeof globalThis & { kept: Kept };

export async function loadSlowly(page: Page, address: string): Promise<Loading> {
  await page.addInitScript(() => {
    const kept: Kept = { largest: 0, shift: 0, tasks: [] };
    (globalThis as Watched).kept = kept;
    const watch = (type: string, take: (entry: PerformanceEntry) => void) =>
      new PerformanceObserver((list) => list.getEntries().forEach(take)).observe({
        type,
        buffered: true,
      });
    watch('largest-contentful-paint', ({ startTime }) => (kept.largest = startTime));
    watch('layout-shift', (entry) => {
      kept.shift += (entry as PerformanceEntry & { readonly value: number }).value;
    });
    watch('longtask', ({ startTime: start, duration }) => kept.tasks.push({ start, duration }));
  });
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Network.enable');
  await devtools.send('Network.emulateNetworkConditions', slowPhone);
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  await page.goto(address, { waitUntil: 'networkidle' });
  await page.waitForTimeout(quiet);
  const loading = await page.evaluate(() => {
    const { largest, shift, tasks } = (globalThis as Watched).kept;
    const first = performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? 0;
    const blocked = tasks
      .filter(({ start, duration }) => start + duration > first)
      .reduce((sum, { duration }) => sum + Math.max(0, duration - 50), 0);
    return { firstPaint: first, largestPaint: largest, shift, blocked };
  });
  await fullSpeed(devtools);
  return loading;
}

async function fullSpeed(devtools: CDPSession): Promise<void> {
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: 1 });
  await devtools.send('Network.emulateNetworkConditions', {
    offline: false,
    latency: 0,
    downloadThroughput: -1,
    uploadThroughput: -1,
  });
}
