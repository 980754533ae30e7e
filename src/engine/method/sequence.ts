import type { Quantity } from '#engine/measure/quantity.ts';
import type { Severity } from '#engine/severity.ts';
import type { Text } from '#engine/text.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import type { DataSheet, FixedRule, SheetNumber } from './data-sheet.ts';
import type { Decoy, Joint, Method, NumberId, Setting, Step, StepId, Wait } from './method.ts';
import { type PartialOrder, partialOrder, predecessors } from './partial-order.ts';
import { fixRule, leastOf } from './rule.ts';
import { conditionsOf, holds, type Site, type Weather, weatherAfter } from './site.ts';

/** The steps of one method on one wall, with everything that their order, waits and settings owe. */
export type Sequence = {
  readonly method: Method;
  readonly dataSheet: DataSheet;
  readonly site: Site;
  /** Of the site, before any step changes it. */
  readonly weather: Weather;
  /** As written, which is one correct order; everything below counts by place in this list. */
  readonly steps: readonly SequenceStep[];
  readonly constraints: readonly Ordered[];
  /** The transitive closure of the constraints. */
  readonly order: PartialOrder;
  /** Cards that can be played and belong on no such wall. */
  readonly strays: readonly Stray[];
  readonly joints: readonly Joint[];
};

export type SequenceStep = Step & {
  readonly dries: Drying | undefined;
  readonly asks: readonly Ask[];
};

/**
 * A wait with its least time under the weather of the site, as those steps leave it that must come
 * before, and with the rule for how far the surface must be above the dew point.
 */
export type Drying = Wait & {
  readonly least: Quantity<'time'>;
  readonly margin: FixedRule | undefined;
};

/** A setting with the number that judges it under that same weather. */
export type Ask = Setting & { readonly sheetNumber: SheetNumber; readonly rule: FixedRule };

/** Step `before` comes before step `after`, both by place in the sequence. */
export type Ordered = {
  readonly before: number;
  readonly after: number;
  readonly because: Text;
  readonly severity: Severity;
};

/** A decoy, or a step that belongs to another kind of wall. */
export type Stray =
  | { readonly kind: 'decoy'; readonly decoy: Decoy }
  | { readonly kind: 'other-site'; readonly step: Step };

export type SequenceFault =
  | { readonly code: 'CIRCULAR_ORDER'; readonly steps: readonly StepId[] }
  | { readonly code: 'UNKNOWN_NUMBER'; readonly step: StepId; readonly number: NumberId };

/** Builds the sequence of a method on a site; fails where the compiler would have complained. */
export function sequenceOf(
  method: Method,
  dataSheet: DataSheet,
  site: Site,
): Result<Sequence, SequenceFault> {
  const weather = conditionsOf(method.site, site);
  const present = method.steps.filter((step) => holds(step.when, site));
  const constraints = constraintsAmong(present, site);
  const order = partialOrder(
    present.length,
    constraints.map(({ before, after }) => [before, after] as const),
  );
  if (!order.ok) {
    const cycle = order.error.cycle.flatMap((place) => present[place]?.id ?? []);
    return fault({ code: 'CIRCULAR_ORDER', steps: cycle });
  }
  const steps: SequenceStep[] = [];
  for (const [place, step] of present.entries()) {
    const earlier = predecessors(order.value, place).map((before) => present[before]!);
    const fitted = fitStep(step, dataSheet, weatherAfter(weather, earlier));
    if (!fitted.ok) return fitted;
    steps.push(fitted.value);
  }
  return ok({
    method,
    dataSheet,
    site,
    weather,
    steps,
    constraints,
    order: order.value,
    strays: [
      ...method.decoys
        .filter((decoy) => holds(decoy.when, site))
        .map((decoy) => ({ kind: 'decoy', decoy }) as const),
      ...method.steps
        .filter((step) => !holds(step.when, site))
        .map((step) => ({ kind: 'other-site', step }) as const),
    ],
    joints: method.water.joints.filter((joint) => holds(joint.when, site)),
  });
}

function fitStep(
  step: Step,
  dataSheet: DataSheet,
  weather: Weather,
): Result<SequenceStep, SequenceFault> {
  const { wait } = step;
  const named = [wait?.number, wait?.dewMargin, ...step.settings.map(({ number }) => number)];
  const unknown = named.find((number) => number && !dataSheet.numbers.has(number));
  if (unknown) return fault({ code: 'UNKNOWN_NUMBER', step: step.id, number: unknown });
  const ruleOf = (number: NumberId | undefined): FixedRule | undefined => {
    const rule = number && dataSheet.numbers.get(number)?.rule;
    return rule && fixRule(rule, weather);
  };
  const asks = step.settings.flatMap((setting) => {
    const sheetNumber = dataSheet.numbers.get(setting.number);
    return sheetNumber
      ? [{ ...setting, sheetNumber, rule: fixRule(sheetNumber.rule, weather) }]
      : [];
  });
  const waited = ruleOf(wait?.number);
  const dries = wait &&
    waited && {
      ...wait,
      least: leastOf(waited) as Quantity<'time'>,
      margin: ruleOf(wait.dewMargin),
    };
  return ok({ ...step, dries, asks });
}

/** The stated constraints whose two steps are both on the wall. */
function constraintsAmong(steps: readonly Step[], site: Site): readonly Ordered[] {
  const place = new Map(steps.map((step, index) => [step.id, index]));
  return steps.flatMap((step, after) =>
    step.after
      .filter((constraint) => holds(constraint.when, site))
      .flatMap(({ step: earlier, because, severity }) => {
        const before = place.get(earlier);
        return before === undefined ? [] : [{ before, after, because, severity }];
      }),
  );
}
