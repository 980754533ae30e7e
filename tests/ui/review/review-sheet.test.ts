import { render, screen, within } from '@testing-library/svelte';
import { createRawSnippet } from 'svelte';
import { describe, expect, it } from 'vitest';
import { markKept } from '#engine/marking/kept-review.ts';
import { anySite } from '#engine/method/bench.ts';
import { randomFrom, shuffle } from '#engine/random.ts';
import { shelfOf } from '#ui/mockup/inspection.ts';
import ReviewSheet from '#ui/review/ReviewSheet.svelte';
import { shippedBundle, shippedMethods } from '../shipped-content.ts';

const actions = createRawSnippet(() => ({ render: () => '<p></p>' }));

function showReview(method: string, seed: number, most: number) {
  const bundle = shippedBundle(method);
  const random = randomFrom(seed);
  const cards = [...bundle.method.steps, ...bundle.method.decoys].map(({ id }) => id as string);
  const steps = shuffle(random, cards)
    .slice(0, most)
    .map((step) => ({ step, minute: 0 }));
  const site = anySite(bundle.method.site, random);
  const marked = markKept({ attempt: { method, site, steps }, help: [] }, shelfOf(bundle));
  if (!marked.ok) throw new Error(JSON.stringify(marked.error));
  render(ReviewSheet, { bundle, marked: marked.value, help: [], actions });
  return marked.value;
}

describe('laws', () => {
  const walls = shippedMethods.flatMap((method) =>
    [1, 2, 3, 4].map((seed) => ({ method, seed, most: seed === 1 ? 0 : 12 * seed })),
  );

  it.each(walls)(
    'every review of $method can be shown, however it was built (seed $seed, $most cards)',
    ({ method, seed, most }) => {
      const { review } = showReview(method, seed, most);
      const list = screen.getByRole('region', { name: /^Punch list/ });
      const shown = [...list.querySelectorAll<HTMLElement>('li.edge')];
      expect(shown).toHaveLength(review.items.length);
      for (const [place, { because, rework }] of review.items.entries()) {
        const item = within(shown[place]!);
        expect(item.getByText(because.en)).toBeInTheDocument();
        const undo =
          rework.undo === 'tear-out'
            ? 'On a real wall, tear out:'
            : 'On a real wall, mend in place:';
        expect(item.getByText(undo).closest('p')).toHaveTextContent(`${undo} ${rework.say.en}`);
      }
    },
  );
});
