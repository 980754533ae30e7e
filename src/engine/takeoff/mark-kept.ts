/**
 * Marks a kept problem again from what was written or picked, never from what it says of itself. The
 * first try at a part counts; the last is what later parts are judged by.
 */
import { fault, ok, type Result } from '#engine/result.ts';
import { choicesOf } from './choices.ts';
import type { PartId } from './family.ts';
import type { Amount, Instance, Solved } from './instance.ts';
import type { KeptProblem, KeptTry } from './kept-problem.ts';
import { creditOf, judgeAnswer } from './marks.ts';
import { pickableUnits, readAnswer, type Reading } from './read-answer.ts';
import type { Verdict } from './verdict.ts';

export type MarkedPart = {
  readonly part: PartId;
  /** Undefined where nothing was answered. */
  readonly verdict: Verdict | undefined;
};

export type MarkedProblem = {
  /** Of 100; a part not answered, or shown first, earns nothing. */
  readonly score: number;
  readonly parts: readonly MarkedPart[];
};

/** Names the part whose answer cannot have been given to this problem. */
export type UnfitAnswer = { readonly part: string; readonly text: string };

/** One mark for each part of the problem, in their order. */
export function markProblem(
  instance: Instance,
  { seed, form, answers }: Pick<KeptProblem, 'seed' | 'form' | 'answers'>,
): Result<MarkedProblem, UnfitAnswer> {
  const known = instance.parts.map(({ part }) => part.id as string);
  const stray = answers.find(({ part }) => !known.includes(part));
  if (stray) return fault({ part: stray.part, text: '' });
  const earlier = new Map<PartId, Amount>();
  const parts: MarkedPart[] = [];
  for (const solved of instance.parts) {
    const { id } = solved.part;
    const read = reader(instance, solved, form, seed);
    let first: Verdict | undefined;
    for (const given of answers.find(({ part }) => part === id)?.tries ?? []) {
      const reading = read(given);
      if (!reading) return fault({ part: id, text: given.text });
      first ??= judgeAnswer(instance, id, reading, earlier);
      earlier.set(id, reading.value);
    }
    parts.push({ part: id, verdict: first });
  }
  const credit = parts.reduce((sum, { verdict }) => sum + creditOf(verdict), 0);
  return ok({ score: Math.round((1000 * credit) / parts.length) / 10, parts });
}

/** How the tries at a part are read: by the choices it offers, where it is picked from some. */
function reader(
  instance: Instance,
  { part }: Solved,
  form: KeptProblem['form'],
  seed: string,
): (given: KeptTry) => Reading | undefined {
  const isPicked = form === 'choice' || part.answer.kind === 'decision';
  const choices = isPicked ? choicesOf(instance, part.id, seed) : [];
  if (choices.length > 0) {
    return ({ text }) => {
      const choice = choices.find((one) => one.text.en === text);
      return choice && { value: choice.value, unit: undefined };
    };
  }
  const units = pickableUnits(part);
  return ({ text, picked }) => {
    const unit = picked === undefined ? undefined : units.find((one) => one === picked);
    const read = readAnswer(part, text, unit);
    return read.ok ? read.value : undefined;
  };
}
