/**
 * How a page loads on a slow phone with nothing kept: first and largest contentful paint, what moved
 * afterwards, how long the main thread kept taps waiting, and how much came over the network.
 *
 * The processor is slowed four times. The network is what Chromium's own tools call slow 4G: 1.6 Mbit/s
 * down and 750 kbit/s up at nine tenths, and 150 ms from end to end, which they count 3.75 times since
 * they delay requests and not packets (`front_end/core/sdk/NetworkManager.ts` of its developer tools; from
 * memory).
 */
import type { CDPSession, Page } from '@playwright/test';

export type Loading = {
  readonly firstPaint: number;
  readonly largestPaint: number;
  /** Layout shift, without a unit. */
  readonly shift: number;
  /** What tasks took beyond 50 ms each, after the first paint. */
  readonly blocked: number;
  /** Bytes of answers as they came, heads and all. */
  readonly transferred: number;
};

export const slowdown = 4;

export const network = {
  offline: false,
  latency: 150 * 3.75,
  downloadThroughput: (1.6 * 1000 * 1000 * 0.9) / 8,
  uploadThroughput: (750 * 1000 * 0.9) / 8,
};

type Bound = { readonly most: number; readonly because: string };

/** A page is to load as well as web.dev calls good; each figure with where that is said, or why. */
export const bounds: Readonly<Record<keyof Loading, Bound>> = {
  firstPaint: { most: 1800, because: 'https://web.dev/articles/fcp' },
  largestPaint: { most: 2500, because: 'https://web.dev/articles/lcp' },
  blocked: { most: 200, because: 'https://web.dev/articles/tbt' },
  shift: { most: 0.1, because: 'https://web.dev/articles/cls' },
  transferred: {
    most: 250_000,
    because:
      'what comes through this network in the 1.4 s that two requests one after the other leave of 2.5 s',
  },
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
  await devtools.send('Network.emulateNetworkConditions', network);
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: slowdown });
  let transferred = 0;
  devtools.on('Network.loadingFinished', ({ encodedDataLength }) => {
    transferred += encodedDataLength;
  });
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
  return { ...loading, transferred };
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
