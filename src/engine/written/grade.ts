import type { Outcome } from './verdict.ts';

/** The outcome for a share of what was asked; below nothing is nothing. */
export function grade(share: number): { readonly outcome: Outcome; readonly credit: number } {
  if (share >= 1) return { outcome: 'right', credit: 1 };
  const credit = Math.min(0.999, Math.max(0, Math.round(share * 1000) / 1000));
  return { outcome: credit > 0 ? 'partly' : 'wrong', credit };
}
