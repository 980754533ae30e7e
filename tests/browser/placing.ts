/**
 * How long a person waits for a card to be up, on the largest wall that is shipped, from the middle of
 * the work to its end: guided, so that the machine, the marking of the card and the picture all take part.
 */
import { type Browser, type CDPSession, devices, type Locator, type Page } from '@playwright/test';
import { walls } from '../content/walls.ts';
import { Builder, minutesToDry, rightSettings } from '../journeys/building.ts';
import { median, quantile, tableOf } from './figures.ts';
import { type Interaction, timed, watchInteractions } from './interactions.ts';
import type { Site } from './site.ts';

const slowdown = 4;
const boundToPaint = 50;
const boundOfPicture = 16;

const largest = walls.reduce((a, b) =>
  b.sequence.steps.length > a.sequence.steps.length ? b : a,
).sequence;

const layers = largest.steps.flatMap(({ draws }) => draws).length;

const address = (): string => {
  const asked = new URLSearchParams({ ...largest.site, mode: 'guided', seed: '4' });
  return `/practise/${largest.method.id}?${asked.toString()}`;
};

const screens = {
  phone: { ...devices['Pixel 5'], viewport: { width: 360, height: 740 } },
  desktop: { viewport: { width: 1280, height: 800 }, hasTouch: false },
};

type Press = () => Promise<void>;

/** How long a finger rests on the glass, or on the button of a mouse, in milliseconds. */
const rest = 80;

/**
 * A press at the middle of something, as bare as a finger's: by touch on a phone, and elsewhere by a
 * mouse that lies there already, down and up apart as people press. Sent all at once, moving, pressing
 * and letting go would wait for each other, which no person makes them do.
 */
async function pressOn(page: Page, target: Locator, hasTouch: boolean): Promise<Press> {
  await target.scrollIntoViewIfNeeded();
  const box = await target.boundingBox();
  if (!box) throw new Error('There is nothing to press.');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  if (!hasTouch) {
    await page.mouse.move(x, y);
    return async () => {
      await page.mouse.down();
      await page.waitForTimeout(rest);
      await page.mouse.up();
    };
  }
  const finger = await page.context().newCDPSession(page);
  return async () => {
    await finger.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x, y }] });
    await page.waitForTimeout(rest);
    await finger.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await finger.detach();
  };
}

type Timings = {
  readonly choosing: Interaction[];
  readonly placing: Interaction[];
  /** The picture alone, drawn on by one step: the wall as built and as it should be, so it is two. */
  readonly pictures: Interaction[];
};

/** The review of the wall, run through step by step from its middle: nothing but pictures changes. */
async function replayed(page: Page, devtools: CDPSession): Promise<readonly Interaction[]> {
  await page.getByRole('button', { name: 'Have it inspected' }).first().click();
  const slider = page.getByRole('slider', { name: 'Place in the work' });
  const last = Number(await slider.getAttribute('max'));
  await slider.fill(String(last >> 1));
  // To look the slider up again for every press would count as script of the page: 8 ms each.
  await slider.focus();
  const timings: Interaction[] = [];
  for (let at = last >> 1; at < last; at += 1) {
    timings.push(await timed(page, devtools, () => page.keyboard.press('ArrowRight')));
  }
  return timings;
}

async function timingsOn(
  page: Page,
  site: Site,
  slower: number,
  hasTouch: boolean,
): Promise<Timings> {
  const devtools = await watchInteractions(page);
  await page.goto(site.address + address());
  const builder = new Builder(page);
  const middle = Math.floor(largest.steps.length / 2);
  await builder.build(largest.steps.slice(0, middle));
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: slower });

  const timings: Timings = { choosing: [], placing: [], pictures: [] };
  for (const step of largest.steps.slice(middle)) {
    const card = builder.card(step.say.en);
    await card.evaluate((row) => row.scrollIntoView({ block: 'start', behavior: 'instant' }));
    timings.choosing.push(await timed(page, devtools, await pressOn(page, card, hasTouch)));
    for (const { ask, value } of rightSettings(step)) {
      await page.getByLabel(ask, { exact: true }).fill(value);
    }
    const putUp = page.getByRole('button', { name: 'Put it up' });
    timings.placing.push(await timed(page, devtools, await pressOn(page, putUp, hasTouch)));
    if (await card.count()) throw new Error(`"${step.say.en}" was not put up.`);
    const minutes = minutesToDry(step);
    if (minutes > 0) await builder.wait(minutes);
  }
  timings.pictures.push(...(await replayed(page, devtools)));
  return timings;
}

const figures = (all: readonly number[]): readonly string[] =>
  [median(all), quantile(all, 0.75), Math.max(...all)].map((value) => value.toFixed(1));

/** Prints the figures; true when they are within bounds. */
export async function measurePlacing(browser: Browser, site: Site): Promise<boolean> {
  const answers = Object.values(largest.site).join(', ');
  console.log(
    `Placing a card: ${largest.method.id} (${answers}), ${largest.steps.length} steps and ` +
      `${layers} layers, guided, from the middle of the work to its end. Milliseconds.`,
  );
  const rows: (readonly string[])[] = [['', 'median', '3 of 4', 'worst']];
  let holds = true;

  for (const [screen, options] of Object.entries(screens)) {
    for (const slower of [slowdown, 1]) {
      const context = await browser.newContext({ ...options, serviceWorkers: 'block' });
      const page = await context.newPage();
      const { choosing, placing, pictures } = await timingsOn(page, site, slower, options.hasTouch);
      await context.close();
      const name = `${screen}, ${slower === 1 ? 'full speed' : `${slower} times slower`}`;
      const waits = placing.map(({ toPaint }) => toPaint);
      const scripts = placing.map(({ script }) => script);
      const drawn = pictures.map(({ script }) => script);
      const measured = {
        'tap to paint, placing': waits,
        'tap to paint, choosing': choosing.map(({ toPaint }) => toPaint),
        'script of placing (processor)': scripts,
        'script of two pictures (processor)': drawn,
        'style and layout (processor)': placing.map(({ layout }) => layout),
      };
      for (const [what, all] of Object.entries(measured)) {
        rows.push([`${name}: ${what}`, ...figures(all)]);
      }
      holds &&=
        slower === slowdown
          ? quantile(waits, 0.75) < boundToPaint
          : quantile(drawn, 0.75) < boundOfPicture;
    }
  }
  console.log(tableOf(rows));
  console.log(
    `${holds ? 'holds' : 'FAILS'}  three taps of four paint within ${boundToPaint} ms on a processor ` +
      `${slowdown} times slower, and the picture, even two of them, is drawn on by a step in under ` +
      `${boundOfPicture} ms of script at full speed`,
  );
  return holds;
}
