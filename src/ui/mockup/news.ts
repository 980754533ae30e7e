import type { Rung } from '#engine/marking/guidance.ts';
import type { Touch } from '#engine/marking/touch-all.ts';
import type { BenchCard } from '#engine/method/bench.ts';
import type { Text } from '#engine/text.ts';
import type { Refusal } from './refusal.ts';

export type Hint = { readonly rung: Rung; readonly texts: readonly Text[] };

/** The last thing that happened, for a screen that says it and a voice that reads it. */
export type News =
  | { readonly kind: 'placed'; readonly card: BenchCard; readonly count: number }
  | { readonly kind: 'refused'; readonly refusal: Refusal }
  | { readonly kind: 'undone'; readonly card: BenchCard | undefined }
  | { readonly kind: 'waited' | 'unwaited'; readonly minutes: number; readonly reading: number }
  | { readonly kind: 'touched'; readonly touched: readonly Touch[] }
  | { readonly kind: 'hinted'; readonly hint: Hint };
