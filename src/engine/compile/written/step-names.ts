import type { MethodId, StepId } from '#engine/method/method.ts';
import type { StepOf } from '#engine/written/question.ts';
import { checkName } from '#engine/compile/names.ts';
import { faultAt, type At } from './at.ts';
import type { QuestionShelf } from './shelf.ts';

/** Steps as a question names them: `base-of-wall/prime-wall`. */
export const stepsOf = (
  at: At,
  names: readonly string[],
  shelf: QuestionShelf,
): readonly StepOf[] =>
  names.flatMap((name, index) => {
    const found = stepOf(at, name, index, shelf);
    return found ? [found] : [];
  });

function stepOf(at: At, name: string, index: number, shelf: QuestionShelf): StepOf | undefined {
  const below = ['of', index];
  const [method, step, ...others] = name.split('/');
  if (!method || !step || others.length > 0) {
    const cure = 'Write the method, a stroke and the step: base-of-wall/prime-wall.';
    if (name !== '') faultAt(at, below, 'WRONG_SHAPE', `"${name}" names no step.`, cure);
    return undefined;
  }
  const path = [...at.path, ...below];
  checkName(at.file, 'UNKNOWN_METHOD', path, 'method', method, shelf.methodIds);
  const known = shelf.methods.get(method as MethodId);
  if (!known) return undefined;
  const steps = new Set<string>(known.steps.map(({ id }) => id));
  checkName(at.file, 'UNKNOWN_STEP', path, `step of "${method}"`, step, steps);
  return steps.has(step) ? { method: known.id, step: step as StepId } : undefined;
}
