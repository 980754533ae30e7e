import type { Method, Step } from '#engine/method/method.ts';
import type { Condition, SiteQuestion } from '#engine/method/site.ts';
import { checkName } from './names.ts';
import { keyAt, type Path, type SourceFile } from './source-file.ts';

/** Everything that one part of a method says of another is there. */
export function checkReferences(file: SourceFile, method: Method): void {
  for (const [path, condition] of conditionsIn(method))
    checkCondition(file, path, method.site, condition);
  checkSteps(file, method);
  checkDecoyIds(file, method);
  checkJoints(file, method);
}

/** Where each condition on the site stands, and what it asks. */
export function* conditionsIn({
  steps,
  decoys,
  water,
}: Method): Generator<readonly [Path, Condition]> {
  for (const step of steps) {
    yield [['steps', step.id, 'when'], step.when];
    for (const [index, constraint] of step.after.entries()) {
      yield [['steps', step.id, 'after', index, 'when'], constraint.when];
    }
  }
  for (const decoy of decoys) yield [['decoys', decoy.id, 'when'], decoy.when];
  for (const joint of water.joints) yield [['water', 'joints', joint.id, 'when'], joint.when];
}

export function checkCondition(
  file: SourceFile,
  path: Path,
  site: readonly SiteQuestion[],
  condition: Condition,
): void {
  const questions = new Map(
    site.map(({ id, values }) => [id, new Set(values.map((value) => value.id))]),
  );
  for (const [question, allowed] of condition) {
    const at = [...path, question];
    const values = questions.get(question);
    if (!values) {
      const known = new Set(questions.keys());
      checkName(file, 'UNKNOWN_SITE_QUESTION', at, 'site question', question, known);
      continue;
    }
    allowed.forEach((value, index) =>
      checkName(
        file,
        'UNKNOWN_SITE_VALUE',
        [...at, index],
        `value of "${question}"`,
        value,
        values,
      ),
    );
  }
}

function checkSteps(file: SourceFile, { steps }: Method): void {
  const known = idsOf(steps);
  for (const step of steps) {
    const path = ['steps', step.id];
    step.after.forEach((constraint, index) =>
      checkName(
        file,
        'UNKNOWN_STEP',
        [...path, 'after', index, 'step'],
        'step',
        constraint.step,
        known,
      ),
    );
    const settings = idsOf(step.settings);
    step.draws.forEach(({ takes }, index) => {
      for (const [measure, setting] of takes) {
        const at = [...path, 'draws', index, 'takes', measure];
        checkName(file, 'UNKNOWN_SETTING', at, 'setting of this step', setting, settings);
      }
    });
  }
}

/** Both lie on the same bench, so a card's id names one or the other. */
function checkDecoyIds(file: SourceFile, { steps, decoys }: Method): void {
  const known = idsOf(steps);
  for (const { id } of decoys.filter((decoy) => known.has(decoy.id))) {
    const message = `"${id}" is a step as well as a decoy.`;
    file.fault(
      'DUPLICATE_KEY',
      keyAt(file, ['decoys', id]),
      message,
      'Give one of them another name.',
    );
  }
}

function checkJoints(file: SourceFile, { steps, decoys, water }: Method): void {
  const stepById = new Map<string, Step>(steps.map((step) => [step.id, step]));
  const known = { step: idsOf(steps), decoy: idsOf(decoys), place: idsOf(water.places) };
  for (const joint of water.joints) {
    const path = ['water', 'joints', joint.id];
    for (const end of ['from', 'to'] as const) {
      checkName(file, 'UNKNOWN_PLACE', [...path, end], 'place', joint[end], known.place);
    }
    joint.keptBy.forEach(({ step, setting }, index) => {
      const at = [...path, 'kept-by', index];
      checkName(file, 'UNKNOWN_STEP', [...at, 'step'], 'step', step, known.step);
      const settings = stepById.get(step)?.settings;
      if (setting === undefined || !settings) return;
      const what = `setting of "${step}"`;
      checkName(file, 'UNKNOWN_SETTING', [...at, 'setting'], what, setting, idsOf(settings));
    });
    joint.spoiltBy.forEach((decoy, index) =>
      checkName(file, 'UNKNOWN_DECOY', [...path, 'spoilt-by', index], 'decoy', decoy, known.decoy),
    );
  }
}

const idsOf = (all: readonly { readonly id: string }[]): ReadonlySet<string> =>
  new Set(all.map(({ id }) => id));
