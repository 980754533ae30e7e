/** What a sitting asks, as it is kept: drawn once, and never drawn again. */
import type { SittingPlan } from '#engine/exam/sitting.ts';
import type { Spread } from '#engine/exam/spread.ts';
import type { Site } from '#engine/method/site.ts';

/** Shares that are expected to be right, of the form and of the bank it was drawn from. */
export type FormMatch = {
  readonly difficulty: Spread;
  readonly target: Spread;
  readonly isMatched: boolean;
};

/** Of a take-off the problems of its items, of a mock-up the walls; a written part's items say it all. */
export type Drawn = {
  readonly items: readonly string[];
  /** Of a renewal that asks most about what has faded: how many questions of each topic. */
  readonly asks?: Readonly<Record<string, number>>;
  /** Of a written part: how hard the form is expected to be. Plans of before it was kept have none. */
  readonly match?: FormMatch;
  readonly problems?: readonly {
    readonly family: string;
    readonly seed: string;
    /** Of the problem as it was drawn: another content may make another one of the same seed. */
    readonly print: string;
  }[];
  readonly walls?: readonly {
    readonly method: string;
    readonly site: Site;
    /** Of what the wall asks, as it was drawn. */
    readonly print: string;
  }[];
};

export type KeptPlan = Drawn & {
  /** By which everything was drawn, and by which choices are put in another order. */
  readonly seed: string;
  readonly allowed: number;
  readonly grace: number;
};

type Row = {
  readonly id: string;
  readonly person_id: string;
  readonly part: string;
  readonly plan: string;
};

export const keptPlan = ({ plan }: Pick<Row, 'plan'>): KeptPlan => JSON.parse(plan) as KeptPlan;

/** The same for the engine's sitting. */
export function planOf(row: Row): SittingPlan {
  const { items, allowed, grace } = keptPlan(row);
  return { id: row.id, candidate: row.person_id, part: row.part, items, allowed, grace };
}
