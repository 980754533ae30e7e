/** What is looked up or converted before a formula is worked out. */
import { formatDecimal } from '#engine/measure/format-number.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { fixRule, leastOf } from '#engine/method/rule.ts';
import type { WeatherCondition } from '#engine/method/site.ts';
import type { Text } from '#engine/text.ts';
import { conditionNames } from './chart.ts';
import type { Part } from './family.ts';
import { inEach } from './fill-text.ts';
import type { Term } from './formula.ts';
import { amountOf, type Instance } from './instance.ts';
import { quantityLeaf, stated, styleShown } from './shown-values.ts';
import { usualStyle, writeQuantity } from './style.ts';
import { gather } from './terms.ts';
import type { WorkedLine } from './worked-line.ts';

/** `100'-0" = 1200 in`, for every name that is shown in another unit than it was given in. */
export function conversions(root: Term, instance: Instance, part: Part): readonly WorkedLine[] {
  const texts = new Map<string, Text>();
  for (const term of leavesOf(root)) {
    const value = amountOf(term, instance.slate);
    const style = typeof value === 'boolean' ? undefined : styleShown(part, value);
    if (typeof value === 'boolean' || style === undefined || term.op === 'value') continue;
    const from = stated(term, instance);
    const to = quantityLeaf(value, style);
    if (isSaidAlike(from.en, to.text.en)) continue;
    const sign = to.about ? '≈' : '=';
    texts.set(
      from.en,
      inEach((language) => `${from[language]} ${sign} ${to.text[language]}`),
    );
  }
  return [...texts.values()].map((text) => ({ kind: 'convert', text }));
}

/** 8" and 8 in, 50'-0" and 50 ft need no conversion. */
const isSaidAlike = (a: string, b: string): boolean =>
  a.replace(/'-0"$/, ' ft').replace(/"$/, ' in') === b;

function leavesOf(root: Term): readonly Term[] {
  const terms = new Set<Term>();
  gather(root, terms);
  return [...terms].filter((term) => !('args' in term));
}

/** How a number that depends on the weather is read off its chart. */
export const chartLines = (root: Term, instance: Instance): readonly WorkedLine[] =>
  leavesOf(root).flatMap((term) => {
    const { family, sheet } = instance.takeoff;
    const given = family.givens.find(({ id }) => term.op === 'given' && id === term.name);
    if (given?.from.kind !== 'sheet') return [];
    const { number, at } = given.from;
    const rule = sheet.numbers.get(number)?.rule;
    if (rule?.kind !== 'by') return [];
    const weather = new Map(
      [...at].flatMap(([condition, { root }]) => {
        const value = amountOf(root, instance.slate);
        return typeof value === 'boolean' ? [] : [[condition, value] as const];
      }),
    );
    const plain = leastOf(fixRule({ ...rule, times: undefined }, weather));
    const whole = leastOf(fixRule(rule, weather));
    const factor = plain.value.equals(0n) ? undefined : whole.value.div(plain.value);
    const first = readOff(rule.curve.by, weather, plain);
    const second = rule.times && conditionText(rule.times.by, weather);
    return [
      { kind: 'chart', text: first } as const,
      ...(second && factor
        ? [
            {
              kind: 'chart',
              text: inEach((language) => `${second[language]}: × ${formatDecimal(factor, 3)}`),
            } as const,
          ]
        : []),
    ];
  });

type Weather = ReadonlyMap<WeatherCondition, Quantity>;

function readOff(by: WeatherCondition, weather: Weather, value: Quantity): Text {
  const condition = conditionText(by, weather);
  return inEach((language) => {
    const written = writeQuantity(value, usualStyle(value), language, { honest: true });
    return `${condition[language]}: ${written}`;
  });
}

const conditionText = (by: WeatherCondition, weather: Weather): Text =>
  inEach((language) => {
    const at = weather.get(by);
    const written = at ? ` ${writeQuantity(at, usualStyle(at), language)}` : '';
    return `${conditionNames[by][language]}${written}`;
  });
