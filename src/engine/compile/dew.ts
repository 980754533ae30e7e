/**
 * Whether what must not be put on dew is put on a surface that is far enough above the dew point, on every
 * site, once all is done that must come before it: O(sites x steps x constraints) for each such step.
 */
import { absolute } from '#engine/measure/arithmetic.ts';
import { formatQuantity } from '#engine/measure/format-quantity.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { zero } from '#engine/measure/rational.ts';
import type { SheetNumber } from '#engine/method/data-sheet.ts';
import { dewConditions, marginAboveDewPoint } from '#engine/method/dew-point.ts';
import type { Method, Step, StepId } from '#engine/method/method.ts';
import { fixRule, judge } from '#engine/method/rule.ts';
import {
  allSites,
  conditionsOf,
  holds,
  type Site,
  type Weather,
  weatherAfter,
} from '#engine/method/site.ts';
import type { SheetDraft } from './data-sheet.ts';
import { mostSites } from './order.ts';
import { placeAt, type SourceFile } from './source-file.ts';
import { wallsPhrase } from './which-walls.ts';

export function checkDew(file: SourceFile, method: Method, { numbers }: SheetDraft): void {
  const watched = method.steps.flatMap((step) => {
    const number = step.wait?.dewMargin && numbers.get(step.wait.dewMargin);
    return number?.dimension === 'temperature-difference' ? [{ step, number }] : [];
  });
  const count = method.site.reduce((sites, { values }) => sites * values.length, 1);
  if (watched.length === 0 || count > mostSites) return;
  const sites = allSites(method.site);
  for (const { step, number } of watched) {
    const wet = sites
      .filter((site) => holds(step.when, site))
      .map((site) => ({ site, weather: weatherBefore(method, site, step) }))
      .filter(({ weather }) => isTooNear(weather, number));
    const [first] = wet;
    if (!first) continue;
    const walls = wallsPhrase(
      wet.map(({ site }) => site),
      sites,
    );
    file.fault(
      'DEW_ON_SITE',
      placeAt(file, ['steps', step.id, 'wait', 'dew-margin']),
      `${walls} "${step.id}" is done with the surface ${distance(first.weather)}, against "${number.id}".`,
      'Let a step that must come before it change that: changes: { surface-temperature: ... }.',
    );
  }
}

/** A weather that leaves something open has had its own fault. */
function isTooNear(weather: Weather, { rule }: SheetNumber): boolean {
  if (!dewConditions.every((condition) => weather.has(condition))) return false;
  const margin = marginAboveDewPoint(weather);
  return !margin || !judge(fixRule(rule, weather), margin).within;
}

function distance(weather: Weather): string {
  const margin: Quantity<'temperature-difference'> | undefined = marginAboveDewPoint(weather);
  if (!margin) return 'beyond all temperatures that have a known dew point';
  const degrees = formatQuantity(absolute(margin), { unit: 'F°', places: 1 });
  return `${degrees} ${margin.value.lt(zero) ? 'below' : 'above'} the dew point`;
}

/** The weather of a site when a step is done, as what must come before the step has left it. */
function weatherBefore({ site: questions, steps }: Method, site: Site, step: Step): Weather {
  const present = new Map(
    steps.filter(({ when }) => holds(when, site)).map((each) => [each.id, each]),
  );
  const before = new Set<StepId>();
  const follow = ({ after }: Step): void => {
    for (const { step: id, when } of after) {
      const earlier = present.get(id);
      if (!earlier || before.has(id) || !holds(when, site)) continue;
      before.add(id);
      follow(earlier);
    }
  };
  follow(step);
  const done = steps.filter(({ id }) => before.has(id));
  return weatherAfter(conditionsOf(questions, site), done);
}
