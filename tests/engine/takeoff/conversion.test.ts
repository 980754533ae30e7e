/** The units of answers, checked against those of math.js, which has a table and an arithmetic of its own. */
import { unit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { approximate } from '#engine/measure/rational.ts';
import { value } from './worked-out.ts';

const pairs = [
  ['1 in', 'in', 'cm'],
  ['12 ft 6 in', 'ft', 'm'],
  ['3.82 m', 'm', 'inch'],
  ['40 mil', 'mil', 'mm'],
  ['1 yd', 'yard', 'm'],
  ['250 ft2', 'sqft', 'm2'],
  ['144 in2', 'sqin', 'm2'],
  ['1 gal', 'gallon', 'cuin'],
  ['10.1 fl oz', 'floz', 'cuin'],
  ['20 fl oz', 'fluidounce', 'ml'],
  ['29 fl oz', 'floz', 'litre'],
  ['1 ft3', 'cuft', 'gallon'],
  ['90 min', 'minute', 'hour'],
  ['2 h', 'hour', 'second'],
  ['45 deg', 'deg', 'rad'],
  ['70 °F', 'degF', 'degC'],
  ['-40 °C', 'degC', 'degF'],
] as const;

/** In the base unit of this engine, as a float. */
const bases: Readonly<Record<string, string>> = {
  length: 'm',
  area: 'm2',
  volume: 'm3',
  time: 's',
  angle: 'deg',
  temperature: 'K',
};

describe('math.js', () => {
  it.each(pairs)('agrees on %s', (text, theirs) => {
    const ours = value(`"${text}"`);
    if (typeof ours === 'boolean') throw new Error('This is no quantity.');
    const amount = text === '12 ft 6 in' ? 12.5 : Number.parseFloat(text);
    const base = bases[ours.dimension.name]!;
    expect(approximate(ours.value) / unit(amount, theirs).toNumber(base)).toBeCloseTo(1, 9);
  });

  it.each(pairs)('agrees on %s in another unit', (text, theirs, other) => {
    const amount = text === '12 ft 6 in' ? 12.5 : Number.parseFloat(text);
    const names: Readonly<Record<string, string>> = {
      cm: '1 cm',
      m: '1 m',
      inch: '1 in',
      mm: '1 mm',
      m2: '1 m2',
      cuin: '1 in3',
      ml: '1 mL',
      litre: '1 L',
      gallon: '1 gal',
      hour: '1 h',
      second: '1 s',
    };
    const one = names[other];
    // Degrees of a thermometer and radians are no multiples of each other here.
    if (one === undefined) return expect(['rad', 'degC', 'degF']).toContain(other);
    const ratio = value(`"${text}" / "${one}"`);
    if (typeof ratio === 'boolean') throw new Error('This is no ratio.');
    expect(approximate(ratio.value) / unit(amount, theirs).toNumber(other)).toBeCloseTo(1, 9);
  });
});
