/**
 * From a tap to the next paint, as the browser itself times it (Event Timing, W3C), and the processor's
 * time that went into it. The browser gives durations in steps of 8 ms and leaves out those under 16.
 */
import type { CDPSession, Page } from '@playwright/test';

export type Interaction = {
  /** Milliseconds from the press to the paint that shows what it did; 16 also for less. */
  readonly toPaint: number;
  /** Milliseconds of script, style and layout, in time of the processor. */
  readonly script: number;
  readonly layout: number;
};

type Seen = { readonly interaction: number; readonly duration: number };
type Watched = typeof globalThis & { seen: Seen[] };

const shortest = 16;

/** To be called before the page is opened. */
export async function watchInteractions(page: Page): Promise<CDPSession> {
  await page.addInitScript(() => {
    const seen: Seen[] = [];
    (globalThis as Watched).seen = seen;
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as PerformanceEventTiming[]) {
        const { interactionId: interaction, duration } = entry;
        if (interaction) seen.push({ interaction, duration });
      }
    }).observe({ type: 'event', durationThreshold: 16 } as PerformanceObserverInit);
  });
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Performance.enable', { timeDomain: 'threadTicks' });
  return devtools;
}

async function spent(devtools: CDPSession): Promise<ReadonlyMap<string, number>> {
  const { metrics } = await devtools.send('Performance.getMetrics');
  return new Map(metrics.map(({ name, value }) => [name, value * 1000]));
}

/** Two frames and a moment: by then what a press did is painted, and timed. */
const settle = (page: Page): Promise<void> =>
  page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(resolve, 100)));
      }),
  );

export async function timed(
  page: Page,
  devtools: CDPSession,
  press: () => Promise<void>,
): Promise<Interaction> {
  await settle(page);
  await page.evaluate(() => ((globalThis as Watched).seen.length = 0));
  const before = await spent(devtools);
  await press();
  await settle(page);
  const after = await spent(devtools);
  const durations = await page.evaluate(() =>
    (globalThis as Watched).seen.map(({ duration }) => duration),
  );
  const since = (name: string) => (after.get(name) ?? 0) - (before.get(name) ?? 0);
  return {
    toPaint: Math.max(shortest, ...durations),
    script: since('ScriptDuration'),
    layout: since('LayoutDuration') + since('RecalcStyleDuration'),
  };
}
