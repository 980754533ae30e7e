import fc from 'fast-check';
import { quantity } from '#engine/measure/conversion.ts';
import type {
  Constraint,
  DataSheetId,
  Method,
  MethodId,
  SourceId,
  Step,
  StepId,
} from '#engine/method/method.ts';
import type { Condition, SiteQuestion } from '#engine/method/site.ts';
import type { Text } from '#engine/text.ts';

const said: Text = { en: 'said', es: 'dicho' };

const question = (id: string, values: readonly string[]): SiteQuestion => ({
  id,
  name: said,
  values: values.map((value) => ({ id: value, name: said, conditions: new Map() })),
});

export const questions: readonly SiteQuestion[] = [
  question('edge', ['plain', 'drip']),
  question('corner', ['none', 'inside', 'outside']),
];

/** Nothing in most cases, as in most methods. */
export const anyCondition: fc.Arbitrary<Condition> = fc
  .record(
    Object.fromEntries(
      questions.map(({ id, values }) => [id, fc.subarray(values.map((value) => value.id))]),
    ),
    { requiredKeys: [] },
  )
  .map((asked) => new Map(Object.entries(asked).map(([id, values]) => [id, values ?? []])));

const step = (id: string, when: Condition, after: readonly Constraint[]): Step => ({
  id: id as StepId,
  say: said,
  when,
  keyPoints: [],
  reason: said,
  severity: 'major',
  takes: quantity(1, 'min'),
  after,
  wait: undefined,
  settings: [],
  hazards: [],
  draws: [],
  changes: new Map(),
  rework: { undo: 'in-place', say: said },
  source: 'common-practice' as SourceId,
});

const size = 5;
const names = Array.from({ length: size }, (_, index) => `step-${index}`);

const anyConstraint: fc.Arbitrary<Constraint> = fc.record({
  step: fc.constantFrom(...names).map((name) => name as StepId),
  because: fc.constant(said),
  severity: fc.constant('major' as const),
  when: anyCondition,
});

/** Methods of five steps with any constraints between them, most of them circular somewhere. */
export const anySmallMethod: fc.Arbitrary<Method> = fc
  .tuple(
    fc.array(anyCondition, { minLength: size, maxLength: size }),
    fc.array(fc.array(anyConstraint, { maxLength: 2 }), { minLength: size, maxLength: size }),
  )
  .map(([whens, afters]) => ({
    id: 'small' as MethodId,
    title: said,
    purpose: said,
    governs: said,
    dataSheet: 'tiny' as DataSheetId,
    assembly: 'wall-base',
    site: questions,
    steps: names.map((name, index) => step(name, whens[index]!, afters[index]!)),
    decoys: [],
    water: { places: [], joints: [] },
  }));
