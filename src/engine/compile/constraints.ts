import type { Method } from '#engine/method/method.ts';
import { holds, type Condition, type Site } from '#engine/method/site.ts';
import { canMeet } from './condition.ts';
import { placeAt, type Path, type SourceFile } from './source-file.ts';

/** A stated constraint: the step at `before` in the list comes before the step at `after`. */
export type Arc = {
  readonly before: number;
  readonly after: number;
  readonly path: Path;
  /** All must hold for the constraint to bind: its own, and those of both its steps. */
  readonly conditions: readonly Condition[];
};

export const binds = ({ conditions }: Arc, site: Site): boolean =>
  conditions.every((condition) => condition.size === 0 || holds(condition, site));

/** The constraints between two steps of the method, without those that can bind on no site. */
export function soundArcs(file: SourceFile, method: Method): readonly Arc[] {
  const index = new Map(method.steps.map((step, place) => [step.id, place]));
  return method.steps.flatMap((step, after) => {
    const sound: Arc[] = [];
    for (const [each, constraint] of step.after.entries()) {
      const before = index.get(constraint.step);
      if (before === undefined) continue;
      const path = ['steps', step.id, 'after', each, 'step'];
      const conditions = [constraint.when, step.when, method.steps[before]!.when];
      const arc = { before, after, path, conditions };
      if (isSound(file, method, arc, sound)) sound.push(arc);
    }
    return sound;
  });
}

function isSound(
  file: SourceFile,
  { site, steps }: Method,
  arc: Arc,
  earlier: readonly Arc[],
): boolean {
  const place = placeAt(file, arc.path);
  const name = steps[arc.before]!.id;
  if (arc.before === arc.after) {
    const message = `"${name}" would have to come before itself.`;
    file.fault('STEP_BEFORE_ITSELF', place, message, 'Name another step, or leave this out.');
    return false;
  }
  if (!canMeet(site, ...arc.conditions)) {
    if (canMeet(site, steps[arc.before]!.when) && canMeet(site, steps[arc.after]!.when)) {
      const message = `No site has "${name}" and this step together where this constraint holds.`;
      file.fault(
        'NEVER_TOGETHER',
        place,
        message,
        'Change one "when:", or leave the constraint out.',
      );
    }
    return false;
  }
  const repeats = earlier.some(
    (other) => other.before === arc.before && canMeet(site, ...arc.conditions, ...other.conditions),
  );
  if (repeats) {
    const message = `"${name}" must come before this step already.`;
    const cure = 'Keep one of them, or give them conditions that never meet.';
    file.fault('REPEATED_CONSTRAINT', place, message, cure);
  }
  return !repeats;
}

/** A step that no site has teaches nobody. */
export function checkReach(file: SourceFile, { site, steps }: Method): void {
  for (const { id, when } of steps) {
    if (canMeet(site, when)) continue;
    const message = `No site has "${id}".`;
    const place = placeAt(file, ['steps', id, 'when']);
    file.fault('UNREACHABLE_STEP', place, message, 'Let its "when:" allow at least one value.');
  }
}
