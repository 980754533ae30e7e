import { precedes } from '#engine/method/partial-order.ts';
import { pick, shuffle } from '#engine/random.ts';
import { inEach } from '#engine/written/number-words.ts';
import { phrase } from '#engine/written/patterns.ts';
import { askedOf, wallWords, type Ground, type Maker } from './maker.ts';
import { unlike } from './unlike.ts';

/** So many steps before and after the one that is missing are told. */
const reach = 2;

/**
 * Which step is missing from a stretch of the work. It is one that must come after something in the
 * stretch and before something else there, so that nobody can say that it was done at another time;
 * the others were done, or belong on other walls.
 */
export const missingStep: Maker = (ground, random, id) => {
  const { sequence, patterns } = ground;
  const { steps, strays } = sequence;
  const gaps = gapsIn(ground);
  if (gaps.length === 0) return undefined;
  const gap = pick(random, gaps);
  const step = steps[gap]!;
  const told = stretch(gap, steps.length).filter((place) => place !== gap);
  const elsewhere = strays.map((stray) => (stray.kind === 'decoy' ? stray.decoy : stray.step).say);
  const candidates = shuffle(random, [
    ...shuffle(random, elsewhere)
      .slice(0, 2)
      .map((say) => ({ say, because: phrase(patterns, 'missing-elsewhere', { other: say }) })),
    ...shuffle(random, told)
      .slice(0, 2)
      .map((place) => steps[place]!)
      .map(({ say }) => ({ say, because: phrase(patterns, 'missing-done', { other: say }) })),
  ]);
  const wrong = unlike(step.say, candidates);
  if (!wrong) return undefined;
  const list = inEach((language) =>
    told.map((place, index) => `${index + 1}. ${steps[place]!.say[language]}`).join(' · '),
  );
  const { say, reason } = step;
  return {
    ...askedOf(
      ground,
      step,
      id,
      phrase(patterns, 'missing-ask', { wall: wallWords(ground), list }),
      phrase(patterns, 'missing-point', { step: say, reason }),
    ),
    kind: 'choose-one',
    right: say,
    wrong,
  };
};

const stretch = (gap: number, size: number): readonly number[] =>
  Array.from({ length: 2 * reach + 1 }, (_, index) => gap - reach + index).filter(
    (place) => place >= 0 && place < size,
  );

function gapsIn({ sequence: { steps, order } }: Ground): readonly number[] {
  return [...steps.keys()].filter((gap) => {
    const near = stretch(gap, steps.length);
    return (
      near.some((place) => precedes(order, place, gap)) &&
      near.some((place) => precedes(order, gap, place))
    );
  });
}
