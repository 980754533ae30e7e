import { takeoffBundle } from '#engine/compile/takeoff-bundle.ts';
import { instanceOf, type Instance } from '#engine/takeoff/instance.ts';
import { writeAnswer } from '#engine/takeoff/problem.ts';
import { takeoffOf } from '#engine/takeoff/takeoff.ts';
import { tinyContent } from '../tiny-content.ts';

const found = takeoffBundle(tinyContent, 'tiny');
const fitted = found && takeoffOf(found.family, found.dataSheet);
if (!found || !fitted?.ok) throw new Error('The small content of the tests has lost its problems.');

export const tinyTakeoffBundle = found;
export const tinyTakeoff = fitted.value;

/** Three parts: a count, a time that builds on it, a decision. */
export function tinyProblem(seed = '5'): Instance {
  const instance = instanceOf(tinyTakeoff, seed);
  if (!instance.ok) throw new Error('No such tiny problem.');
  return instance.value;
}

/** The right answer to a part, as it is written. */
export const rightAnswer = ({ parts }: Instance, place: number): string => {
  const { part, right } = parts[place]!;
  return writeAnswer(part.answer, right, 'en');
};
