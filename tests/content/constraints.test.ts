/** Every stated constraint is needed: without it some wall has more correct orders, or it stands in the list. */
import { expect, it } from 'vitest';
import { isSubset } from '#engine/method/bits.ts';
import { partialOrder, type PartialOrder } from '#engine/method/partial-order.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import { content, walls } from './walls.ts';

/**
 * Implied by others on every wall, and kept: each tells a reason that none of the binding ones tells.
 */
const implied: Readonly<Record<string, readonly string[]>> = {
  'base-of-wall': ['clean-substrate -> prime-wall', 'fasten-strap -> fasten-bar'],
  'shelf-angle': [
    'clean-angle -> prime-wall',
    'fix-strap -> prime-wall',
    'check-conditions -> prime-sheet',
    'seal-end-dams -> leave-weeps',
    'seal-end-dams -> lay-wicks',
    'bed-seam-toe -> leave-weeps',
    'bed-seam-toe -> lay-wicks',
    'clean-angle -> set-drip-edge',
    'set-drip-edge -> lay-mastic',
  ],
  'window-sill': [
    'clean-opening -> prime-opening',
    'check-conditions -> prime-pieces',
    'dress-corners -> prime-corners',
    'prime-pieces -> lay-pan',
    'turn-up-pan -> lap-jambs',
    'roll-pan -> seal-edges',
    'seal-edges -> seat-window',
    'lap-weather-barrier -> seat-window',
    'set-corners -> prime-corners',
  ],
};

function pairsOf({ steps, constraints }: Sequence): readonly string[] {
  return [
    ...new Set(
      constraints.map(({ before, after }) => `${steps[before]!.id} -> ${steps[after]!.id}`),
    ),
  ];
}

/** A pair that others imply leaves the closure as it is; any other leaves its two steps unordered. */
function isNeeded({ steps, constraints, order }: Sequence, pair: string): boolean {
  const others = constraints.filter(
    ({ before, after }) => `${steps[before]!.id} -> ${steps[after]!.id}` !== pair,
  );
  if (others.length === constraints.length) return false;
  const without = partialOrder(
    steps.length,
    others.map(({ before, after }) => [before, after] as const),
  );
  if (!without.ok) throw new Error(without.error.code);
  const isSame = ({ before }: PartialOrder): boolean =>
    order.before.every((bits, step) => isSubset(bits, before[step]!));
  return !isSame(without.value);
}

it.each([...content.methods.keys()])('every constraint of %s binds some wall', (method) => {
  const own = walls.filter(({ sequence }) => sequence.method.id === method);
  const stated = [...new Set(own.flatMap(({ sequence }) => pairsOf(sequence)))];
  expect(stated.length).toBeGreaterThan(20);
  const idle = stated.filter((pair) => !own.some(({ sequence }) => isNeeded(sequence, pair)));
  expect(idle).toEqual(implied[method] ?? []);

  const reasons = new Map<string, string>(
    own.flatMap(({ sequence: { steps, constraints } }) =>
      constraints.map(
        ({ before, after, because }) =>
          [`${steps[before]!.id} -> ${steps[after]!.id}`, because.en] as const,
      ),
    ),
  );
  const alike = idle.filter((pair) =>
    stated.some((other) => !idle.includes(other) && reasons.get(other) === reasons.get(pair)),
  );
  expect(alike).toEqual([]);
});
