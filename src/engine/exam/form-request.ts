import type { BankItem } from './bank.ts';
import type { Blueprint } from './scheme.ts';

export type FormRequest<I extends BankItem> = {
  /** In any order; without those that were retired. */
  readonly bank: readonly I[];
  readonly blueprint: Blueprint;
  readonly seed: number | string;
  /** How many forms were drawn from this bank so far. */
  readonly drawn: number;
  /** Above 0, at most 1; see `isBarred`. */
  readonly cap?: number;
  /** What the candidate had on earlier tries. */
  readonly seen?: ReadonlySet<string>;
};

export type FormFault =
  | { readonly code: 'ITEM_TWICE'; readonly id: string }
  | {
      readonly code: 'TOO_FEW' | 'SEEN_TOO_OFTEN';
      readonly topic: string;
      readonly wanted: number;
      readonly there: number;
    }
  | { readonly code: 'ENEMIES' };
