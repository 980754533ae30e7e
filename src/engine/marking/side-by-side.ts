/**
 * What was played beside the nearest correct order. The cards that stand come in the same order on both
 * sides and share a row; between them, what was lifted out or belongs nowhere stands on the left alone, and
 * what was put back or was missing on the right alone. O(cards).
 */
import type { DecoyId, StepId } from '#engine/method/method.ts';
import type { Attempt } from './attempt.ts';
import type { Review } from './review.ts';

export type Row = {
  readonly played:
    | {
        readonly card: StepId | DecoyId;
        /** Place among the cards played. */
        readonly at: number;
        readonly fate: 'stands' | 'moved' | 'stray' | 'again';
      }
    | undefined;
  readonly right:
    { readonly step: StepId; readonly fate: 'stands' | 'moved' | 'added' } | undefined;
};

export function sideBySide({ played }: Attempt, { items, nearestOrder }: Review): readonly Row[] {
  const fates = new Map(
    items.flatMap(({ kind, at }) => {
      const fate = fateOf[kind];
      return fate && at !== undefined ? [[at, fate] as const] : [];
    }),
  );
  const left = played.map(({ card }, at) => ({
    card,
    at,
    fate: fates.get(at) ?? ('stands' as const),
  }));
  const standing = new Set(left.flatMap(({ card, fate }) => (fate === 'stands' ? [card] : [])));
  const placed = new Set(left.map(({ card }) => card));
  const right = nearestOrder.map((step) => ({
    step,
    fate: standing.has(step)
      ? ('stands' as const)
      : placed.has(step)
        ? ('moved' as const)
        : ('added' as const),
  }));

  const rows: Row[] = [];
  let [i, j] = [0, 0];
  while (i < left.length || j < right.length) {
    const [a, b] = [left[i], right[j]];
    const onLeft = a !== undefined && (a.fate !== 'stands' || !b || b.fate === 'stands');
    const onRight = b !== undefined && (b.fate !== 'stands' ? !onLeft : !a || a.fate === 'stands');
    rows.push({ played: onLeft ? a : undefined, right: onRight ? b : undefined });
    if (onLeft) i += 1;
    if (onRight) j += 1;
  }
  return rows;
}

const fateOf: Partial<Record<string, 'moved' | 'stray' | 'again'>> = {
  'out-of-order': 'moved',
  'not-on-this-wall': 'stray',
  'done-again': 'again',
};
