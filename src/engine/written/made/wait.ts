import { scale } from '#engine/measure/arithmetic.ts';
import { isWhole, rational } from '#engine/measure/rational.ts';
import type { SequenceStep } from '#engine/method/sequence.ts';
import { pick, shuffle } from '#engine/random.ts';
import { quantityText } from '#engine/written/number-words.ts';
import { phrase } from '#engine/written/patterns.ts';
import { ruleText } from '#engine/written/rule-text.ts';
import { askedOf, wallWords, type Maker } from './maker.ts';
import { unlike } from './unlike.ts';

const shorter = [rational(1, 4), rational(1, 2)];
const longer = [rational(3, 2), rational(2)];

/** The least time that something must dry in this weather, among shorter and longer ones. */
export const waitAfter: Maker = (ground, random, id) => {
  const { sequence, patterns } = ground;
  const drying = sequence.steps.filter(isTold);
  if (drying.length === 0) return undefined;
  const step = pick(random, drying);
  const { least, because } = step.dries!;
  const rule = ruleText({ kind: 'at-least', value: least });
  const wrong = unlike(
    quantityText(least),
    shuffle(random, [...shorter, ...longer]).map((part) => {
      const pattern = longer.includes(part) ? 'value-not-the-bound' : 'value-outside';
      return {
        say: quantityText(scale(least, part)),
        because: phrase(patterns, pattern, { rule }),
      };
    }),
  );
  if (!wrong) return undefined;
  const { say } = step;
  return {
    ...askedOf(
      ground,
      step,
      id,
      phrase(patterns, 'wait-ask', { wall: wallWords(ground), step: say }),
      phrase(patterns, 'wait-point', { step: say, rule, because }),
    ),
    kind: 'choose-one',
    right: quantityText(least),
    wrong,
  };
};

/** Nobody asks for 7 min 36 s: the time comes out in half minutes in this weather, or is not asked for. */
const isTold = ({ dries }: SequenceStep): boolean =>
  dries !== undefined && isWhole(dries.least.value.div(30n));
