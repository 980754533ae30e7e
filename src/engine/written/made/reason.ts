import type { SequenceStep } from '#engine/method/sequence.ts';
import { pick, shuffle } from '#engine/random.ts';
import { languages } from '#engine/text.ts';
import { phrase } from '#engine/written/patterns.ts';
import { readsAs } from '#engine/written/reads-as.ts';
import { askedOf, type Maker } from './maker.ts';
import { unlike } from './unlike.ts';

/**
 * Why a step is done, among the reasons of other steps. Two steps that leave the same thing on the wall
 * may share a reason, and so may two whose reasons use the same words: neither stands beside the other.
 */
export const reasonOf: Maker = (ground, random, id) => {
  const { sequence, patterns } = ground;
  const step = pick(random, sequence.steps);
  const candidates = shuffle(random, sequence.steps)
    .filter(
      (other) => other.id !== step.id && !shareALayer(step, other) && !shareWords(step, other),
    )
    .map((other) => ({
      say: other.reason,
      because: phrase(patterns, 'reason-of-other', { other: other.say }),
    }));
  const wrong = unlike(step.reason, candidates);
  if (!wrong) return undefined;
  const { say, reason } = step;
  const ask = phrase(patterns, 'reason-ask', { step: say });
  const point = phrase(patterns, 'reason-point', { step: say, reason });
  return { ...askedOf(ground, step, id, ask, point), kind: 'choose-one', right: reason, wrong };
};

export const shareALayer = (one: SequenceStep, other: SequenceStep): boolean =>
  one.draws.some(({ layer }) => other.draws.some((drawn) => drawn.layer === layer));

/** Shorter words are mostly articles and prepositions. */
const longEnough = 5;
const sharedPart = 1 / 3;

export const shareWords = (one: SequenceStep, other: SequenceStep): boolean =>
  languages.some((language) => {
    const [a, b] = [wordsOf(one.reason[language]), wordsOf(other.reason[language])];
    return a.intersection(b).size >= Math.min(a.size, b.size) * sharedPart;
  });

const wordsOf = (text: string): ReadonlySet<string> =>
  new Set(
    readsAs(text)
      .split(' ')
      .filter((word) => word.length >= longEnough),
  );
