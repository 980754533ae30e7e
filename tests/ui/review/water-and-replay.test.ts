import { fireEvent, render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createRawSnippet } from 'svelte';
import type { Attempt } from '#engine/marking/attempt.ts';
import type { Marked } from '#engine/marking/kept-review.ts';
import { review } from '#engine/marking/review.ts';
import { language, say } from '#ui/language/language.svelte.ts';
import ReviewSheet from '#ui/review/ReviewSheet.svelte';
import { shippedBundle, shippedSequence } from '../shipped-content.ts';

const sequence = shippedSequence('base-of-wall');
const ids = sequence.steps.map(({ id }) => id as string);

const markedFor = (cards: readonly string[]): Marked => {
  const attempt = {
    sequence,
    played: cards.map((card) => ({ card, settings: new Map(), minute: undefined })),
  } as unknown as Attempt;
  const found = review(attempt);
  return { attempt, review: found, score: found.score };
};

async function show(cards: readonly string[]): Promise<Marked> {
  const marked = markedFor(cards);
  render(ReviewSheet, {
    bundle: shippedBundle('base-of-wall'),
    marked,
    help: [],
    actions: createRawSnippet(() => ({ render: () => '<p>what next</p>' })),
  });
  await screen.findByRole('heading', { name: 'Water test' }, { timeout: 15_000 });
  await screen.findByRole('heading', { name: 'Replay' }, { timeout: 15_000 });
  return marked;
}

/** Without the bead and the lap: water gets in by more than one way. */
const leaky = ids.filter((id) => !['seal-bar', 'lap-weather-barrier'].includes(id));

const water = () => within(screen.getByRole('region', { name: 'Water test' }));
const replay = () => within(screen.getByRole('region', { name: 'Replay' }));

beforeEach(() => {
  Element.prototype.scrollIntoView = () => {};
});
afterEach(() => language.choose('en'));

describe('truth', () => {
  test(
    'a right wall says that water stays out and where it leaves',
    { timeout: 30_000 },
    async () => {
      await show(ids);
      expect(screen.getByText(/^No water gets in\. It stays outside/)).toBeInTheDocument();
      expect(water().queryByRole('heading', { name: /Way 1/ })).not.toBeInTheDocument();
      expect(water().queryByRole('checkbox')).not.toBeInTheDocument();
      expect(replay().queryByRole('button', { name: 'Next difference' })).not.toBeInTheDocument();
    },
  );

  test('a way is told from the wet side to the dry', { timeout: 30_000 }, async () => {
    const { review: found } = await show(leaky);
    const path = found.water.leaks[0]!.path;
    const told = within(water().getByRole('list', { name: 'From wet to dry' }));
    const rows = told.getAllByRole('listitem');
    expect(rows).toHaveLength(2 * path.length + 1);
    expect(rows[0]).toHaveTextContent('Cavity wet');
    expect(rows[1]).toHaveTextContent(say(path[0]!.joint.name));
    expect(rows.at(-1)).toHaveTextContent('must stay dry');
  });

  test(
    'an item leads to its ways, and the way shown lights its items',
    { timeout: 30_000 },
    async () => {
      const { review: found } = await show(leaky);
      const { leaks } = found.water;
      const last = leaks.length - 1;
      const item = leaks[last]!.breaches[0]!;
      const row = document.getElementById(`item-${item + 1}`)!;
      await userEvent.click(within(row).getByRole('button', { name: `Way ${last + 1}` }));
      expect(
        water().getByRole('heading', { name: new RegExp(`^Way ${last + 1} of ${leaks.length}`) }),
      ).toBeInTheDocument();
      expect(within(row).getByRole('button', { name: `Way ${last + 1}` })).toHaveAttribute(
        'aria-pressed',
        'true',
      );
      expect(row).toHaveClass('lit');
      const list = within(water().getByRole('list', { name: 'Ways in' }));
      expect(list.getAllByRole('button')[last]).toHaveAttribute('aria-pressed', 'true');
    },
  );

  test(
    'the smallest set of repairs, marked, leaves the wall dry',
    { timeout: 30_000 },
    async () => {
      const { review: found } = await show(leaky);
      const count = found.water.repair!.length;
      expect(water().getByText('Nothing marked yet.')).toBeInTheDocument();
      const [first] = water().getAllByRole('checkbox');
      await userEvent.click(first!);
      expect(water().getByText(/ways shut\. Water still gets in\./)).toBeInTheDocument();
      await userEvent.click(water().getByRole('button', { name: /^Mark the smallest set/ }));
      expect(water().getByText('Repair these: dry.')).toBeInTheDocument();
      const marked = water()
        .getAllByRole<HTMLInputElement>('checkbox')
        .filter(({ checked }) => checked);
      expect(marked).toHaveLength(count);
      await userEvent.click(marked[0]!);
      expect(water().queryByText('Repair these: dry.')).not.toBeInTheDocument();
    },
  );

  test(
    'the replay begins where the two part, and goes by step or by slide',
    { timeout: 30_000 },
    async () => {
      await show(leaky);
      const slider = replay().getByRole<HTMLInputElement>('slider', { name: 'Place in the work' });
      const start = Number(slider.value);
      expect(start).toBe(ids.indexOf('seal-bar') + 1);
      expect(slider).toHaveAttribute('aria-valuetext', expect.stringContaining('left out'));
      expect(replay().getByText('Was left out')).toBeInTheDocument();

      await userEvent.click(replay().getByRole('button', { name: 'Step back' }));
      expect(slider).toHaveValue(String(start - 1));
      expect(replay().queryByText('Was left out')).not.toBeInTheDocument();
      await userEvent.click(replay().getByRole('button', { name: 'Next difference' }));
      expect(slider).toHaveValue(String(start));

      await fireEvent.input(slider, { target: { value: '0' } });
      expect(replay().getByText(`0 of ${leaky.length} up`)).toBeInTheDocument();
      expect(replay().getByRole('button', { name: 'Step back' })).toBeDisabled();
    },
  );

  test('water test and replay change language at once', { timeout: 30_000 }, async () => {
    await show(leaky);
    language.choose('es');
    expect(await screen.findByRole('region', { name: 'Prueba de agua' })).toBeInTheDocument();
    expect(screen.getByRole('slider', { name: 'Punto del trabajo' })).toBeInTheDocument();
  });
});
