import type { Method } from '#engine/method/method.ts';
import type { HiddenFault } from '#engine/written/question.ts';
import { checkName } from '#engine/compile/names.ts';
import { keyAt, type Path } from '#engine/compile/source-file.ts';
import type { At } from './at.ts';
import type { WrittenFault } from './fault.ts';

const kinds = [
  'left-out',
  'out-of-order',
  'rushed',
  'out-of-tolerance',
  'not-on-this-wall',
] as const;

const inFault: Path = ['find-fault', 'fault'];

/** The one fault that is written there, if all that it names is there. */
export function faultFor(at: At, method: Method, written: WrittenFault): HiddenFault | undefined {
  const stated = kinds.filter((kind) => written[kind] !== undefined);
  const isOne =
    stated.length === 1 && (written.minutes !== undefined) === stated.includes('rushed');
  if (!isOne) {
    const message = 'A fault is one thing: a rushed step with its minutes, or any other alone.';
    const cure = `Keep one of: ${kinds.join(', ')}; beside rushed, minutes.`;
    at.file.fault('WRONG_SHAPE', keyAt(at.file, [...at.path, ...inFault]), message, cure);
    return undefined;
  }
  return areKnown(at, method, written) ? hidden(written) : undefined;
}

function hidden(written: WrittenFault): HiddenFault | undefined {
  const tolerance = written['out-of-tolerance'];
  const order = written['out-of-order'];
  if (written['left-out']) return { kind: 'left-out', step: written['left-out'] };
  if (order) return { kind: 'out-of-order', ...order };
  if (written.rushed) {
    return { kind: 'rushed', step: written.rushed, minutes: written.minutes ?? 0 };
  }
  if (tolerance?.value) return { ...tolerance, kind: 'out-of-tolerance', value: tolerance.value };
  const decoy = written['not-on-this-wall'];
  return decoy ? { kind: 'not-on-this-wall', decoy } : undefined;
}

function areKnown(at: At, { id, steps, decoys }: Method, written: WrittenFault): boolean {
  const known = new Set<string>(steps.map((step) => step.id));
  const order = written['out-of-order'];
  const tolerance = written['out-of-tolerance'];
  const named: readonly (readonly [Path, string | undefined])[] = [
    [['left-out'], written['left-out']],
    [['out-of-order', 'before'], order?.before],
    [['out-of-order', 'after'], order?.after],
    [['rushed'], written.rushed],
    [['out-of-tolerance', 'step'], tolerance?.step],
  ];
  const before = at.file.faults.length;
  const pathOf = (below: Path): Path => [...at.path, ...inFault, ...below];
  for (const [below, step] of named) {
    if (step === undefined) continue;
    checkName(at.file, 'UNKNOWN_STEP', pathOf(below), `step of "${id}"`, step, known);
  }
  const step = steps.find((one) => one.id === tolerance?.step);
  if (tolerance && step) {
    const settings = new Set<string>(step.settings.map((setting) => setting.id));
    const path = pathOf(['out-of-tolerance', 'setting']);
    checkName(
      at.file,
      'UNKNOWN_SETTING',
      path,
      `setting of "${step.id}"`,
      tolerance.setting,
      settings,
    );
  }
  const decoy = written['not-on-this-wall'];
  if (decoy !== undefined) {
    const path = pathOf(['not-on-this-wall']);
    const all = new Set<string>(decoys.map((one) => one.id));
    checkName(at.file, 'UNKNOWN_DECOY', path, `decoy of "${id}"`, decoy, all);
  }
  return at.file.faults.length === before;
}
