import type { Mark, Refusal } from './marks.ts';

/** What became of each that was sent, by its place; undefined where the answer is not one of ours. */
export function marksFrom(
  answer: unknown,
  sent: readonly Pick<Mark, 'kind' | 'owner'>[],
): readonly Mark[] | undefined {
  const receipts = (answer as { readonly receipts?: unknown } | null)?.receipts;
  if (!Array.isArray(receipts) || receipts.length !== sent.length) return undefined;
  const marks = receipts.map((receipt, place) => markFrom(receipt, sent[place]!));
  return marks.every((mark) => mark !== undefined) ? marks : undefined;
}

function markFrom(receipt: unknown, { kind, owner }: Pick<Mark, 'kind' | 'owner'>) {
  if (typeof receipt !== 'object' || receipt === null) return undefined;
  const { kept, score, outcome, notCounted, refused } = receipt as Record<string, unknown>;
  const base = { kind, ...(owner ? { owner } : {}) };
  if (refused !== undefined) {
    return { ...base, state: 'refused', why: refused as Refusal } satisfies Mark;
  }
  if (typeof kept !== 'string' || typeof score !== 'number' || typeof outcome !== 'string') {
    return undefined;
  }
  return {
    ...base,
    state: 'sent',
    score,
    outcome,
    ...(typeof notCounted === 'string' ? { notCounted } : {}),
  } satisfies Mark;
}
