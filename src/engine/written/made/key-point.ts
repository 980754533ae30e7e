import type { SequenceStep } from '#engine/method/sequence.ts';
import { pick, shuffle } from '#engine/random.ts';
import { languages, type Language, type Text } from '#engine/text.ts';
import { phrase } from '#engine/written/patterns.ts';
import { readsAs } from '#engine/written/reads-as.ts';
import { askedOf, type Maker } from './maker.ts';
import { shareALayer, shareWords } from './reason.ts';
import { unlike } from './unlike.ts';

/** So many steps, the nearest in the work, lend what is wrong: what is done at that time is plausible. */
const near = 8;

/**
 * Which key point belongs to a step, among those of the steps around it. None may be true of this step,
 * too: so none comes from a step that leaves the same thing on the wall, is the same kind of act, is done
 * for a like reason, or meets the same danger; and each names at least two things, none of which is named
 * in what is said of this step. That shuts out more than it must. O(steps x words).
 */
export const keyPointOf: Maker = (ground, random, id) => {
  const { sequence, patterns } = ground;
  const { steps } = sequence;
  const place = pick(random, [...steps.keys()]);
  const step = steps[place]!;
  if (step.keyPoints.length === 0) return undefined;
  const right = pick(random, step.keyPoints);
  const ofPlace = dangersOfThePlace(steps);
  const candidates = [...steps.keys()]
    .toSorted((a, b) => Math.abs(a - place) - Math.abs(b - place) || a - b)
    .map((at) => steps[at]!)
    .filter((other) => other.id !== step.id && isApart(step, other, ofPlace))
    .flatMap((other) => {
      const points = other.keyPoints.filter((point) => namesOthers(point, step));
      return points.length === 0 ? [] : [{ other, point: pick(random, points) }];
    })
    .slice(0, near)
    .map(({ other, point }) => ({
      say: point,
      because: phrase(patterns, 'key-point-of-other', { other: other.say }),
    }));
  const wrong = unlike(right, shuffle(random, candidates));
  if (!wrong) return undefined;
  const { say, reason } = step;
  const ask = phrase(patterns, 'key-point-ask', { step: say });
  const point = phrase(patterns, 'key-point-point', { step: say, point: right, reason });
  return { ...askedOf(ground, step, id, ask, point), kind: 'choose-one', right, wrong };
};

/** What most steps meet, such as a fall from the edge, makes no two of them alike. */
function dangersOfThePlace(steps: readonly SequenceStep[]): ReadonlySet<string> {
  const met = Map.groupBy(
    steps.flatMap(({ hazards }) => hazards),
    (hazard) => hazard,
  );
  return new Set([...met].flatMap(([id, all]) => (all.length * 2 > steps.length ? [id] : [])));
}

const isApart = (one: SequenceStep, other: SequenceStep, ofPlace: ReadonlySet<string>): boolean =>
  !shareALayer(one, other) &&
  !shareWords(one, other) &&
  languages.every((language) => actOf(one.say[language]) !== actOf(other.say[language])) &&
  !one.hazards.some((hazard) => !ofPlace.has(hazard) && other.hazards.includes(hazard));

/** Steps begin with what is done. */
const actOf = (say: string): string => readsAs(say).split(' ')[0] ?? '';

const leastNamed = 2;

function namesOthers(point: Text, { say, keyPoints, reason }: SequenceStep): boolean {
  return languages.every((language: Language) => {
    const own = named([say, reason, ...keyPoints].map((text) => text[language]).join(' '));
    const names = named(point[language]);
    return names.size >= leastNamed && names.isDisjointFrom(own);
  });
}

/** Words by how they begin, so that primer and primed are one; short ones are mostly little words. */
const begins = 5;

const named = (text: string): ReadonlySet<string> =>
  new Set(
    readsAs(text)
      .split(' ')
      .filter((word) => word.length >= begins)
      .map((word) => word.slice(0, begins)),
  );
