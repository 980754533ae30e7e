import { square } from './spread.ts';

/** A question as the drawing of forms sees it: never its text, never its key. */
export type BankItem = {
  readonly id: string;
  readonly topic: string;
  readonly kind: string;
  /** Expected proportion right, or b of an item response scale once it is known: one scale a bank. */
  readonly difficulty: number;
  /** On how many forms it has been. */
  readonly exposures: number;
  /** Items that must not stand on one form with it: one gives the other away. It binds both ways. */
  readonly enemies?: readonly string[];
};

/** Of all forms drawn, the share that may hold one item; this project's own choice. */
export const usualCap = 0.5;

/**
 * Whether an item has been seen too often to be on the next form. It never stands on more than
 * `cap` x n of the first n forms, rounded up. A topic of at least (1 + 1/cap) items for each that a
 * form takes never runs dry: at cap 1/2, three times as many.
 */
export const isBarred = ({ exposures }: BankItem, drawn: number, cap: number): boolean =>
  exposures >= Math.ceil(cap * (drawn + 1));

/** How likely it is drawn beside others: seen half as often is four times as likely. */
export const weightOf = ({ exposures }: BankItem): number => 1 / square(1 + exposures);
