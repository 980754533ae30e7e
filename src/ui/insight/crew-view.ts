import type { MethodId } from '#engine/method/method.ts';
import type { Interval } from '#engine/statistics/wilson.ts';
import type { Text } from '#engine/text.ts';

/** What one of a crew has practised. */
export type CrewPerson = {
  readonly id: string;
  readonly name: string;
  readonly practised: readonly {
    readonly kind: string;
    readonly about: string;
    readonly best: number;
    readonly lastAt: string;
  }[];
};

export type CrewMethod = { readonly id: MethodId; readonly title: Text; readonly attempts: number };

/** Where a crew goes wrong in one family of problems. */
export type CrewFamily = {
  readonly id: string;
  readonly title: Text;
  readonly parts: readonly {
    readonly id: string;
    readonly name: Text;
    readonly judged: number;
    readonly wrong: number;
    readonly rate: Interval;
    readonly isTooFew: boolean;
    readonly slips: readonly { readonly id: string; readonly tell: Text; readonly made: number }[];
  }[];
};
