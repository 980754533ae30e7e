import { covers, type Pair } from '#engine/method/partial-order.ts';
import { pick, type Random } from '#engine/random.ts';
import { inEach } from '#engine/written/number-words.ts';
import { phrase } from '#engine/written/patterns.ts';
import { askedOf, wallWords, type Ground, type Maker } from './maker.ts';

const least = 3;
const most = 5;

/**
 * Some steps to put in order: a chain, in which each must come before the next, so that there is one right
 * order. A chain of neighbours in the order is one of stated constraints, each with its reason.
 */
export const inOrder: Maker = (ground, random, id) => {
  const { sequence, patterns } = ground;
  const chain = chainIn(covers(sequence.order), random);
  if (chain.length < least) return undefined;
  const steps = chain.map((place) => sequence.steps[place]!);
  const [first, last] = [steps[0]!, steps.at(-1)!];
  return {
    ...askedOf(
      ground,
      last,
      id,
      phrase(patterns, 'order-ask', { wall: wallWords(ground) }),
      phrase(patterns, 'order-point', { first: first.say, last: last.say }),
    ),
    kind: 'order',
    of: steps.map(({ id: step }) => ({ method: sequence.method.id, step })),
    steps: steps.map(({ say }) => say),
    because: inEach((language) =>
      reasonsAlong(ground, chain)
        .map((because) => because[language])
        .join(' '),
    ),
  };
};

/** Down from a place by chance, as far as it goes, and then the last few of that. */
function chainIn(pairs: readonly Pair[], random: Random): readonly number[] {
  if (pairs.length === 0) return [];
  const chain: number[] = [...pick(random, pairs)];
  while (chain.length < most) {
    const further = pairs.filter(([before]) => before === chain.at(-1));
    const earlier = pairs.filter(([, after]) => after === chain[0]);
    if (further.length > 0) chain.push(pick(random, further)[1]);
    else if (earlier.length > 0) chain.unshift(pick(random, earlier)[0]);
    else break;
  }
  return chain;
}

const reasonsAlong = ({ sequence: { constraints } }: Ground, chain: readonly number[]) =>
  chain.slice(1).flatMap((after, index) => {
    const stated = constraints.find(
      (constraint) => constraint.before === chain[index] && constraint.after === after,
    );
    return stated ? [stated.because] : [];
  });
