import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { amountIn, quantity } from '#engine/measure/conversion.ts';
import { parseQuantity } from '#engine/measure/parse-quantity.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { approximate, rational } from '#engine/measure/rational.ts';
import { dewPoint, marginAboveDewPoint } from '#engine/method/dew-point.ts';
import { judge } from '#engine/method/rule.ts';
import type { WeatherCondition } from '#engine/method/site.ts';

const percent = (amount: number): Quantity<'ratio'> => quantity(amount, '%');

function read(text: string): Quantity {
  const parsed = parseQuantity(text);
  if (!parsed.ok) throw new Error(parsed.error.message.en);
  return parsed.value;
}

const weather = (air: string, surface: string, humidity: string) =>
  new Map<WeatherCondition, Quantity>([
    ['air-temperature', read(air)],
    ['surface-temperature', read(surface)],
    ['relative-humidity', read(humidity)],
  ]);

describe('truth', () => {
  // Reckoned independently with the constants 17.625 and 243.04 °C, which
  // https://www.calcipedia.org/calculators/dew-point-calculator gives; the other columns of published
  // constants (17.27/237.3 at https://cales.arizona.edu/azmet/dewpoint.html) differ by up to 0.04 C°.
  it.each([
    [25, 50, 13.8576, 13.8576],
    [20, 60, 11.9999, 12.0044],
    [10, 80, 6.7079, 6.7143],
    [5, 85, 2.6875, 2.694],
    [0, 90, -1.4442, -1.4389],
    [35, 40, 19.3919, 19.3732],
  ])('air of %d °C and %d %% has its dew point at %d °C', (air, humidity, celsius, azmet) => {
    const found = dewPoint(quantity(air, '°C'), percent(humidity))!;
    expect(Math.abs(approximate(amountIn(found, '°C')) - celsius)).toBeLessThanOrEqual(0.00056);
    expect(Math.abs(approximate(amountIn(found, '°C')) - azmet)).toBeLessThan(0.05);
  });

  it.each([
    [70, 50, 50.51],
    [50, 80, 44.074],
    [40, 90, 37.305],
    [90, 60, 74.253],
  ])('air of %d °F and %d %% has its dew point at %d °F', (air, humidity, fahrenheit) => {
    const found = dewPoint(quantity(air, '°F'), percent(humidity))!;
    expect(Math.abs(approximate(amountIn(found, '°F')) - fahrenheit)).toBeLessThan(0.0015);
  });

  // MIL-HDBK-1110, 9.6.6: 5 F° above the dew point and rising,
  // https://ufgscriteria.tpub.com/3_190_06/3_190_060170.htm
  it('at 70 °F and 50 % a surface must have 55.51 °F to be 5 F° above the dew point', () => {
    const rule = { kind: 'at-least', value: read('5 F°') } as const;
    const within = (surface: string) =>
      judge(rule, marginAboveDewPoint(weather('70 °F', surface, '50 %'))!).within;
    expect(within('55.50 °F')).toBe(false);
    expect(within('55.52 °F')).toBe(true);
  });

  // ISO 8502-4 as summed up at
  // https://www.sahawatthanakit1988.com/en/insights/coating-application-conditions-dew-point-rh-iso-8502-4-thailand
  it('5 F° is not 3 C°: a margin of 5.2 F° passes the one and fails the other', () => {
    const margin = read('5.2 F°');
    expect(judge({ kind: 'at-least', value: read('5 F°') }, margin).within).toBe(true);
    expect(judge({ kind: 'at-least', value: read('3 C°') }, margin).within).toBe(false);
  });
});

describe('laws', () => {
  const anyAir = fc.integer({ min: -400, max: 600 }).map((tenths) => rational(tenths, 10));

  it('air that holds all the water it can is at its dew point, to a thousandth of a kelvin', () => {
    fc.assert(
      fc.property(anyAir, (celsius) => {
        const air = quantity(celsius, '°C');
        expect(dewPoint(air, percent(100))!.value.equals(air.value)).toBe(true);
      }),
    );
  });

  it('damper air has a higher dew point, never above its own temperature', () => {
    fc.assert(
      fc.property(anyAir, fc.integer({ min: 1, max: 99 }), (celsius, humidity) => {
        const air = quantity(celsius, '°C');
        const [drier, damper] = [humidity, humidity + 1].map((h) => dewPoint(air, percent(h))!);
        expect(drier!.value.lt(damper!.value)).toBe(true);
        expect(damper!.value.lte(air.value)).toBe(true);
      }),
    );
  });

  it('there is none in dry air, nor beyond the temperatures that the constants are stated for', () => {
    expect(dewPoint(quantity(20, '°C'), percent(0))).toBeUndefined();
    expect(dewPoint(quantity(-41, '°C'), percent(50))).toBeUndefined();
    expect(dewPoint(quantity(61, '°C'), percent(50))).toBeUndefined();
    expect(marginAboveDewPoint(weather('20 °C', '15 °C', '0 %'))).toBeUndefined();
  });

  it('is left open where the weather is, and lies below 0 where dew stands', () => {
    const partly = weather('58 °F', '50 °F', '82 %');
    expect(marginAboveDewPoint(partly)!.value.lt(0n)).toBe(true);
    for (const condition of [...partly.keys()]) {
      const silent = new Map(partly);
      silent.delete(condition);
      expect(marginAboveDewPoint(silent)).toBeUndefined();
    }
  });
});
