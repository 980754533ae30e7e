import { dimension, dimensionPhrase, type DimensionName } from '#engine/measure/dimension.ts';
import type { Rule, SheetNumber } from '#engine/method/data-sheet.ts';
import { dewConditions } from '#engine/method/dew-point.ts';
import type { LayerMeasure } from '#engine/method/drawing.ts';
import type { Method, NumberId, Step } from '#engine/method/method.ts';
import type { Condition, SiteQuestion, WeatherCondition } from '#engine/method/site.ts';
import type { SheetDraft } from './data-sheet.ts';
import { nearestCure } from './names.ts';
import { placeAt, type Path, type SourceFile } from './source-file.ts';

/** What a method asks of the numbers of its data sheet. */
export function checkUses(file: SourceFile, method: Method, sheet: SheetDraft): void {
  for (const step of method.steps) {
    const path = ['steps', step.id];
    if (step.wait) {
      const at = [...path, 'wait', 'number'];
      const number = numberAt(file, at, step.wait.number, sheet);
      if (number) checkWait(file, at, number);
      if (number) checkWeather(file, at, number, method.site, step.when);
    }
    if (step.wait?.dewMargin !== undefined) {
      const at = [...path, 'wait', 'dew-margin'];
      const number = numberAt(file, at, step.wait.dewMargin, sheet);
      if (number) checkMargin(file, at, number);
      if (number) checkWeather(file, at, number, method.site, step.when, dewConditions);
    }
    for (const setting of step.settings) {
      const at = [...path, 'settings', setting.id, 'number'];
      const number = numberAt(file, at, setting.number, sheet);
      if (number) checkSetting(file, at, number);
      if (number) checkWeather(file, at, number, method.site, step.when);
    }
    checkMeasures(file, path, step, sheet);
  }
}

function numberAt(
  file: SourceFile,
  path: Path,
  id: NumberId,
  { id: sheet, numbers }: SheetDraft,
): SheetNumber | undefined {
  const number = numbers.get(id);
  if (number === undefined && id !== '') {
    const message = `The data sheet "${sheet}" has no number "${id}".`;
    file.fault('UNKNOWN_NUMBER', placeAt(file, path), message, nearestCure(id, numbers.keys()));
  }
  return number ?? undefined;
}

function checkWait(file: SourceFile, path: Path, number: SheetNumber): void {
  if (number.dimension === 'time') return;
  const message = `"${number.id}" is ${phraseOf(number)}, not a time.`;
  const cure = 'Name a number that is a time, or make it a setting.';
  file.fault('WAIT_NOT_TIME', placeAt(file, path), message, cure);
}

function checkMargin(file: SourceFile, path: Path, number: SheetNumber): void {
  if (number.dimension === 'temperature-difference') return;
  const message = `"${number.id}" is ${phraseOf(number)}, not a temperature difference.`;
  const cure = 'Name a number such as: at-least: 5 F°.';
  file.fault('UNIT_MISMATCH', placeAt(file, path), message, cure);
}

function checkSetting(file: SourceFile, path: Path, number: SheetNumber): void {
  if (number.entry) return;
  const message = `The data sheet does not say which values of "${number.id}" a learner can set.`;
  const cure = 'Add to the number: entry: { from: ..., to: ..., by: ... }, or { one-of: [...] }.';
  file.fault('NO_ENTRY', placeAt(file, path), message, cure);
}

/** Every site that has the step must state what its number depends on, and what is asked besides. */
function checkWeather(
  file: SourceFile,
  path: Path,
  { id, rule }: SheetNumber,
  site: readonly SiteQuestion[],
  when: Condition,
  asked: readonly WeatherCondition[] = [],
): void {
  for (const condition of new Set([...conditionsOfRule(rule), ...asked])) {
    if (site.some((question) => alwaysStates(question, condition, when))) continue;
    const message = `"${id}" depends on ${condition}, which some site with this step leaves open.`;
    const cure = `Add "${condition}" to the conditions of every value of one site question.`;
    file.fault('UNSTATED_CONDITION', placeAt(file, path), message, cure);
  }
}

const conditionsOfRule = (rule: Rule): readonly WeatherCondition[] =>
  rule.kind === 'by' ? [rule.curve.by, ...(rule.times ? [rule.times.by] : [])] : [];

const alwaysStates = (
  { id, values }: SiteQuestion,
  condition: WeatherCondition,
  when: Condition,
): boolean => {
  const allowed = values.filter((value) => when.get(id)?.includes(value.id) ?? true);
  return allowed.length > 0 && allowed.every((value) => value.conditions.has(condition));
};

const dimensionsOfMeasure = (measure: LayerMeasure): readonly DimensionName[] =>
  measure === 'release'
    ? ['angle']
    : measure === 'slope'
      ? ['length', 'angle', 'ratio']
      : ['length'];

function checkMeasures(file: SourceFile, path: Path, step: Step, { numbers }: SheetDraft): void {
  step.draws.forEach(({ takes }, index) => {
    for (const [measure, settingId] of takes) {
      const setting = step.settings.find(({ id }) => id === settingId);
      const number = setting && numbers.get(setting.number);
      if (!number || dimensionsOfMeasure(measure).includes(number.dimension)) continue;
      const place = placeAt(file, [...path, 'draws', index, 'takes', measure]);
      const message = `"${settingId}" is ${phraseOf(number)}, and no ${measure}.`;
      file.fault(
        'UNIT_MISMATCH',
        place,
        message,
        'Name a setting that the picture can draw to scale.',
      );
    }
  });
}

const phraseOf = ({ dimension: name }: SheetNumber): string =>
  name === 'product' ? 'a product of units' : dimensionPhrase(dimension(name));
