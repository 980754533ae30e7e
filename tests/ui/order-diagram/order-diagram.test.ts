import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, test, vi } from 'vitest';
import { covers } from '#engine/method/partial-order.ts';
import type { Spot } from '#engine/tally/spot.ts';
import { tallyOf } from '#engine/tally/tally.ts';
import { whereItGoesWrong } from '#engine/tally/where-it-goes-wrong.ts';
import { heatOf } from '#ui/order-diagram/heat.ts';
import OrderDiagram from '#ui/order-diagram/OrderDiagram.svelte';
import { built } from '../../engine/tracing/built.ts';
import { walls } from '../../content/walls.ts';
import { tinySequence } from '../tiny-content.ts';

const late = built(['prime@0', 'hang@500 | turn-up=8 in', 'set-edge@500']);
const right = built(['prime@0', 'set-edge@0', 'hang@500 | turn-up=8 in']);

/** Of so many attempts, the edge was set after the sheet hung in so many. */
const troubles = (all: number, wrong: number) =>
  whereItGoesWrong(
    tallyOf(
      Array.from({ length: all }, (_, at) => ({ ...(at < wrong ? late : right), person: 'a' })),
    ),
  );

const sequence = tinySequence({ edge: 'drip' });
const namesOf = (parts: readonly HTMLElement[]) =>
  parts.map((part) => part.getAttribute('aria-label'));

describe('truth', () => {
  test('every step and every line between steps is a button that says how often it went wrong', () => {
    render(OrderDiagram, { sequence, troubles: troubles(12, 3) });
    const diagram = screen.getByRole('group', { name: 'Order of the work' });
    expect(namesOf(within(diagram).getAllByRole('button')).toSorted()).toEqual([
      '1. Prime: wrong in 0 of 12',
      '2. Set the edge: wrong in 3 of 12',
      '3. Hang the sheet: wrong in 0 of 12',
      '“Prime” before “Hang the sheet”: wrong in 0 of 12',
      '“Set the edge” before “Hang the sheet”: wrong in 3 of 12',
    ]);
  });

  test('the count stands in writing on what went wrong, and nowhere else', () => {
    render(OrderDiagram, { sequence, troubles: troubles(12, 3) });
    expect(screen.getAllByText('3/12')).toHaveLength(2);
    expect(screen.queryByText('0/12')).toBeNull();
    expect(screen.getByText('up to 1 in 4')).toBeVisible();
  });

  test('what nobody built yet says so, without a key', () => {
    render(OrderDiagram, { sequence });
    expect(screen.getByRole('button', { name: '1. Prime: not judged yet' })).toBeVisible();
    expect(screen.queryByText('never')).toBeNull();
  });

  test('few attempts are told as too few', () => {
    const heat = heatOf(troubles(3, 1))({
      ...{ method: sequence.method.id, kind: 'step' },
      step: sequence.steps[1]!.id,
    });
    expect(heat.words).toBe('wrong in 1 of 3, too few to say');
  });

  test.each([
    [0, 0],
    [1, 1],
    [2, 1],
    [3, 2],
    [5, 2],
    [6, 3],
    [10, 3],
    [11, 4],
  ])('%i wrong of 20 are drawn as heavy as %i', (wrong, level) => {
    const spot = { method: sequence.method.id, kind: 'step', step: sequence.steps[1]!.id } as const;
    expect(heatOf(troubles(20, wrong))(spot).level).toBe(level);
  });

  test('a line is chosen by tap and by the keyboard, and tells which', async () => {
    const onselect = vi.fn<(spot: Spot) => void>();
    const user = userEvent.setup();
    const { rerender } = render(OrderDiagram, {
      sequence,
      troubles: troubles(12, 3),
      onselect,
    });
    const line = screen.getByRole('button', { name: /^“Set the edge” before/ });
    const spot = { method: 'tiny-wall', kind: 'order', before: 'set-edge', after: 'hang' };

    await user.click(line);
    expect(onselect).toHaveBeenLastCalledWith(spot);
    onselect.mockClear();
    line.focus();
    await user.keyboard('{Enter}');
    await user.keyboard(' ');
    expect(onselect.mock.calls).toEqual([[spot], [spot]]);

    expect(line).toHaveAttribute('aria-pressed', 'false');
    await rerender({ sequence, selected: onselect.mock.lastCall?.[0] });
    expect(line).toHaveAttribute('aria-pressed', 'true');
  });
});

describe('laws', () => {
  test('one tab leads in and the next one out; the arrows reach every part, from top to bottom', async () => {
    const { sequence } = walls[0]!;
    render(OrderDiagram, { sequence });
    const user = userEvent.setup();
    await user.tab();
    const reached: (string | null)[] = [];
    for (let parts = screen.getAllByRole('button').length; parts > 0; parts -= 1) {
      reached.push(document.activeElement?.getAttribute('aria-label') ?? null);
      await user.keyboard('{ArrowDown}');
    }
    const all = namesOf(screen.getAllByRole('button'));
    expect(reached.toSorted()).toEqual(all.toSorted());
    expect(all).toHaveLength(sequence.steps.length + covers(sequence.order).length);
    expect(document.activeElement).toHaveAccessibleName(reached.at(-1)!);

    await user.keyboard('{Home}');
    expect(document.activeElement).toHaveAccessibleName(reached[0]!);
    await user.keyboard('{End}{ArrowUp}');
    expect(document.activeElement).toHaveAccessibleName(reached.at(-2)!);
    await user.tab();
    expect(document.body).toHaveFocus();
  });
});
