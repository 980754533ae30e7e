import type {
  Constraint,
  HazardId,
  NumberId,
  Rework,
  Setting,
  SettingId,
  SourceId,
  Step,
  StepId,
  Wait,
} from '#engine/method/method.ts';
import { severities } from '#engine/severity.ts';
import { draws } from './draws.ts';
import { timeTaken } from './quantity.ts';
import { entries, record } from './group.ts';
import { atLeastOne, list } from './list.ts';
import { mapped, optional, type Reader } from './reader.ts';
import { conditions, when } from './site.ts';
import { idOf, oneOf, text } from './words.ts';

export const severity = oneOf(severities, 'UNKNOWN_SEVERITY', 'severity');

export const hazardIds: Reader<readonly HazardId[]> = optional(
  list(idOf<HazardId>('hazard'), 'hazards'),
  [],
);

export const rework: Reader<Rework> = record({
  undo: oneOf(['in-place', 'tear-out'], 'UNKNOWN_UNDO', 'way to undo work'),
  say: text,
});

const constraint: Reader<Constraint> = record({
  step: idOf<StepId>('step'),
  because: text,
  severity,
  when,
});

const wait: Reader<Wait> = mapped(
  record({
    number: idOf<NumberId>('number'),
    'dew-margin': optional(idOf<NumberId>('number'), undefined),
    because: text,
    test: text,
    severity,
  }),
  ({ 'dew-margin': dewMargin, ...rest }) => ({ ...rest, dewMargin }),
);

const setting = record({ number: idOf<NumberId>('number'), ask: text, because: text, severity });

const settings: Reader<readonly Setting[]> = mapped(
  entries(setting, 'a group of settings, each under its id'),
  (found) => found.map(([id, value]) => ({ id: id as SettingId, ...value })),
);

const step = record({
  say: text,
  when,
  'key-points': list(text, 'texts'),
  reason: text,
  severity,
  takes: timeTaken,
  after: optional(list(constraint, 'steps that must be done before'), []),
  wait: optional(wait, undefined),
  settings: optional(settings, []),
  hazards: hazardIds,
  draws: optional(draws, []),
  changes: optional(conditions, new Map()),
  rework,
  source: idOf<SourceId>('source'),
});

export const steps: Reader<readonly Step[]> = mapped(
  atLeastOne(entries(step, 'a group of steps, each under its id'), 'step'),
  (found) =>
    found.map(([id, { 'key-points': keyPoints, ...rest }]) => ({
      id: id as StepId,
      ...rest,
      keyPoints,
    })),
);
