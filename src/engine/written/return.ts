/**
 * When a question that was missed comes back. Our own rule, simple enough to be told: it is asked again in
 * the same sitting once three others were answered, and once right it returns the next day, then after
 * two days, four, eight, and so on, doubling up to 32 days. A miss starts it over. What was never missed
 * does not return, and a right answer before its day changes nothing. Days are the person's own.
 *
 * That answers spread out last longer than answers at one go: g = 0.74; that growing gaps differ from even
 * ones is not shown (g = 0.034), so the gaps grow only to leave room for what is new. A. Latimier and
 * others, 2021, https://link.springer.com/10.1007/s10648-020-09572-8. O(answers).
 */
import type { QuestionId } from './question.ts';

/** An answer that was given: `at` in milliseconds since 1970. */
export type Answered = {
  readonly question: QuestionId;
  readonly isRight: boolean;
  readonly at: number;
};

/** After how many others it comes back in the same sitting. */
export const othersBetween = 3;

/** In days, the last for ever. */
export const gaps = [1, 2, 4, 8, 16, 32] as const;

/** `again`: in this sitting, after so many others more; `later`: from the start of that day on. */
export type Return = { readonly question: QuestionId } & (
  | { readonly kind: 'again'; readonly others: number }
  | { readonly kind: 'later'; readonly day: number }
);

const dayLength = 86_400_000;
const minuteLength = 60_000;

/** The day of the calendar, counted from 1970, where clocks are so many minutes ahead of UTC. */
export const dayOf = (at: number, minutesAhead: number): number =>
  Math.floor((at + minutesAhead * minuteLength) / dayLength);

type State = { readonly gap: number; readonly day: number; readonly turn: number };

/** What comes back of the answers, the earliest first: one entry for each question ever missed. */
export function returns(
  answers: readonly Answered[],
  now: number,
  minutesAhead = 0,
): readonly Return[] {
  const states = new Map<QuestionId, State>();
  answers.forEach(({ question, isRight, at }, turn) => {
    const day = dayOf(at, minutesAhead);
    const before = states.get(question);
    if (!isRight) states.set(question, { gap: -1, day, turn });
    else if (before && day >= dueDay(before)) {
      const gap = Math.min(before.gap + 1, gaps.length - 1);
      states.set(question, { gap, day, turn });
    }
  });
  const today = dayOf(now, minutesAhead);
  return [...states].map(([question, state]): Return => {
    if (state.gap >= 0) return { question, kind: 'later', day: dueDay(state) };
    const others = new Set(answers.slice(state.turn + 1).map((answer) => answer.question)).size;
    const left = state.day < today ? 0 : Math.max(0, othersBetween - others);
    return { question, kind: 'again', others: left };
  });
}

const dueDay = ({ gap, day }: State): number => (gap < 0 ? day : day + gaps[gap]!);

/** Those whose turn has come: missed ones first, then those that waited the longest. */
export const due = (all: readonly Return[], now: number, minutesAhead = 0): readonly Return[] =>
  all
    .filter((one) =>
      one.kind === 'again' ? one.others === 0 : one.day <= dayOf(now, minutesAhead),
    )
    .toSorted((a, b) => waited(a) - waited(b));

const waited = (one: Return): number => (one.kind === 'again' ? -1 : one.day);
