import { drawnADayLater } from '#engine/inspection/drawn-a-day-later.ts';
import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { suspects } from '#engine/inspection/suspects.ts';
import { zoneNames } from '#engine/picture/words.ts';
import { browserStore } from '#ui/attempts/browser-store.ts';
import { wallToFind } from '#ui/find/wall-to-find.ts';
import FindSheet from '#ui/find/FindSheet.svelte';
import { allLooks, keepLook } from '#ui/find/looked-over.ts';
import { siteLog } from '#engine/inspection/site-log.ts';
import { language, say } from '#ui/language/language.svelte.ts';
import { cardWords, kindWords } from '#ui/review/item-words.ts';
import { shippedBundle, shippedMethods } from '../shipped-content.ts';

const bundle = shippedBundle('base-of-wall');
const seed = '7';
const wall = wallToFind(bundle, seed)!;

const show = () => render(FindSheet, { wall, seed });

const place = (zone: keyof typeof zoneNames) =>
  screen.getByRole('button', { name: say(zoneNames[zone]) });

async function note(fault = wall.faulty.faults[0]!) {
  const zone = fault.zones[0]!;
  await userEvent.click(place(zone));
  await userEvent.click(screen.getByRole('radio', { name: kindWords[fault.kind]() }));
  const card = suspects(wall.sequence, zone, fault.kind).find((one) =>
    fault.cards.some((own) => own === one.card),
  )!;
  await userEvent.click(screen.getByRole('radio', { name: say(card.say) }));
  await userEvent.click(screen.getByRole('button', { name: 'Note it' }));
}

beforeEach(() => {
  localStorage.clear();
  window.scrollTo = () => {};
  Element.prototype.scrollIntoView = () => {};
});
afterEach(() => language.choose('en'));

describe('truth', () => {
  test('every fault named from the lists scores in full and is kept', async () => {
    show();
    for (const fault of wall.faulty.faults) await note(fault);
    const count = wall.faulty.faults.length;
    expect(screen.getByRole('heading', { name: `Noted: ${count} faults` })).toBeInTheDocument();
    await userEvent.click(screen.getByRole('button', { name: /^Hand it in/ }));
    expect(screen.getByRole('heading', { name: `${count} of ${count} found` })).toHaveFocus();
    expect(screen.getAllByText('Found')).toHaveLength(count);
    expect(screen.getByRole('link', { name: 'Next wall' })).toHaveAttribute(
      'href',
      expect.stringMatching(/^\/find\/base-of-wall\?seed=\d+$/),
    );
    expect(allLooks(browserStore)).toMatchObject([
      { seed, score: 100, found: count, faults: count },
    ]);
  });

  test('a fault that was missed is told with its reason and its places', async () => {
    show();
    await userEvent.click(screen.getByRole('button', { name: /^Hand it in/ }));
    expect(screen.getAllByText('Missed')).toHaveLength(wall.faulty.faults.length);
    for (const { kind, item } of wall.faulty.faults) {
      const row = screen
        .getByRole('heading', {
          name: `${kindWords[kind]()}: ${cardWords(bundle.method, item.card)}`,
        })
        .closest('li')!;
      expect(row).toHaveTextContent(say(item.because));
      const shown = within(row).getByRole('button', { name: /^Show it on the wall/ });
      await userEvent.click(shown);
      expect(shown).toHaveAttribute('aria-pressed', 'true');
    }
  });

  test('a note can be taken back, and brought back', async () => {
    show();
    await note();
    await userEvent.click(screen.getByRole('button', { name: 'Remove: 1' }));
    expect(screen.getByRole('heading', { name: 'Noted: 0 faults' })).toBeInTheDocument();
    await userEvent.click(screen.getByRole('button', { name: 'Undo' }));
    expect(screen.getByRole('heading', { name: 'Noted: 1 fault' })).toBeInTheDocument();
    await userEvent.click(screen.getByRole('button', { name: 'Undo' }));
    expect(screen.getByRole('heading', { name: 'Noted: 0 faults' })).toBeInTheDocument();
    expect(screen.getByRole('button', { name: 'Undo' })).toBeDisabled();
  });

  test('nothing is noted before place, kind and card are said', async () => {
    show();
    expect(screen.queryByRole('button', { name: 'Note it' })).not.toBeInTheDocument();
    await userEvent.click(place(wall.faulty.faults[0]!.zones[0]!));
    expect(screen.getByRole('button', { name: 'Note it' })).toBeDisabled();
  });

  test('the whole sheet changes language at once', async () => {
    show();
    language.choose('es');
    expect(await screen.findByRole('heading', { name: 'Bitácora' })).toBeInTheDocument();
    expect(screen.getByRole('heading', { name: 'Base del muro' })).toBeInTheDocument();
  });

  test('what a browser keeps that is no look is passed over', () => {
    browserStore.write('find/strange', { method: 3 });
    keepLook(browserStore, {
      method: 'base-of-wall',
      seed: '1',
      at: '2030-05-01T07:30:00.000Z',
      score: 50,
      found: 1,
      faults: 2,
    });
    expect(allLooks(browserStore).map((look) => look.seed)).toEqual(['1']);
  });
});

describe('laws', () => {
  const found = shippedMethods.flatMap((method) =>
    ['1', '2', '3', '4', '5', '6'].map((one) => wallToFind(shippedBundle(method), one)!),
  );

  test('the log names every card in its order, and the clock never runs back', () => {
    for (const { faulty } of found) {
      const log = siteLog(faulty.attempt, drawnADayLater(faulty.attempt));
      expect(log.map(({ card }) => card)).toEqual(faulty.attempt.played.map(({ card }) => card));
      const minutes = log.map(({ day, time }) => {
        const [hours, rest] = time.split(':').map(Number);
        return day * 1440 + hours! * 60 + rest!;
      });
      expect(minutes).toEqual(minutes.toSorted((a, b) => a - b));
    }
  });

  test('a setting that is out of tolerance is measured in the picture or read in the log', () => {
    for (const { faulty } of found) {
      const drawing = drawnADayLater(faulty.attempt);
      const log = siteLog(faulty.attempt, drawing);
      for (const { item } of faulty.faults) {
        if (item.kind !== 'out-of-tolerance') continue;
        const isLogged = log.some(
          ({ card, settings }) => card === item.card && settings.length > 0,
        );
        const isDrawn = drawing.views.some(({ dimensions }) =>
          dimensions.some(({ setting }) => setting === item.setting),
        );
        expect(isLogged || isDrawn).toBe(true);
      }
    }
  });

  test('nothing in the picture is marked as wrong before it is handed in', () => {
    for (const { faulty } of found) {
      const { parts } = drawnADayLater(faulty.attempt);
      expect(parts.every(({ fault, id }) => fault === undefined && !id.endsWith('mark'))).toBe(
        true,
      );
    }
  });
});
