import { randomFrom } from '#engine/random.ts';
import type { AnswerForm, KeptProblem } from '#engine/takeoff/kept-problem.ts';
import { pickFamily } from '#engine/takeoff/pick-family.ts';
import { freshSeed } from '#ui/mockup/fresh-wall.ts';
import { addressOf, type ProblemAddress } from './problem-address.ts';

/** The families that an address practises; of what there is no more, nothing. */
export const familiesOf = (
  { among, family }: Pick<ProblemAddress, 'among' | 'family'>,
  known: readonly string[],
): readonly string[] => {
  const wanted = among === 'this' ? [family] : among === 'all' ? known : among;
  return wanted.filter((id) => known.includes(id));
};

/** Another problem of the same practice: what was missed comes more often. */
export function nextAddress(
  address: ProblemAddress,
  known: readonly string[],
  kept: readonly KeptProblem[],
): string {
  const families = familiesOf(address, known);
  const family =
    families.length > 0
      ? pickFamily(randomFrom(freshSeed()), families, kept, address.family)
      : address.family;
  return addressOf({ ...address, family, seed: freshSeed() });
}

/** The first problem of a practice among some families, or among all. */
export function firstAddress(
  among: 'all' | readonly string[],
  form: AnswerForm,
  known: readonly string[],
  kept: readonly KeptProblem[],
): string {
  const families = familiesOf({ among, family: '' }, known);
  const family = pickFamily(randomFrom(freshSeed()), families, kept);
  const [only, ...others] = among === 'all' ? known : among;
  const isOne = only !== undefined && others.length === 0;
  return addressOf({ family, seed: freshSeed(), form, among: isOne ? 'this' : among });
}
