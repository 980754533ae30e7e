import { describe, expect, it } from 'vitest';
import { fromText, toText } from '#engine/compile/transport.ts';
import { takeoffBundle, type TakeoffBundle } from '#engine/compile/takeoff-bundle.ts';
import { encodeQuantity } from '#engine/measure/encode-quantity.ts';
import { instanceOf, type Instance } from '#engine/takeoff/instance.ts';
import { problemOf } from '#engine/takeoff/problem.ts';
import { takeoffOf } from '#engine/takeoff/takeoff.ts';
import { content, takeoff } from './shipped.ts';

const made = (id: string, seed: number | string, numbers = {}): Instance => {
  const found = instanceOf(takeoff(id, numbers), seed);
  if (!found.ok) throw new Error(found.error.code);
  return found.value;
};

const numbersOf = ({ givens, parts }: Instance) => [
  ...[...givens].map(([id, value]) => [
    id,
    typeof value === 'boolean' ? value : encodeQuantity(value),
  ]),
  ...parts.map(({ part, right }) => [
    part.id,
    typeof right === 'boolean' ? right : encodeQuantity(right),
  ]),
];

describe('laws', () => {
  it('the same seed makes the same problem, as a number or as its text', () => {
    for (const id of content.takeoffs.keys()) {
      expect(numbersOf(made(id, 12))).toEqual(numbersOf(made(id, '12')));
    }
  });

  it('other seeds make other problems', () => {
    for (const id of content.takeoffs.keys()) {
      const texts = Array.from({ length: 40 }, (_, seed) =>
        JSON.stringify(numbersOf(made(id, seed))),
      );
      expect(new Set(texts).size, id).toBeGreaterThan(35);
    }
  });

  it('a problem is the same after its family was sent to the browser', () => {
    for (const id of content.takeoffs.keys()) {
      const sent = fromText(toText(takeoffBundle(content, id))) as TakeoffBundle;
      const there = takeoffOf(sent.family, sent.dataSheet);
      if (!there.ok) throw new Error(there.error.message);
      const instance = instanceOf(there.value, 3);
      if (!instance.ok) throw new Error(instance.error.code);
      expect(numbersOf(instance.value)).toEqual(numbersOf(made(id, 3)));
    }
  });

  it('there is no bundle of a family that there is not', () => {
    expect(takeoffBundle(content, 'roofs')).toBeUndefined();
    expect(takeoffBundle(content, 'constructor')).toBeUndefined();
  });

  it('every name in every text is filled in', () => {
    for (const id of content.takeoffs.keys()) {
      const { intro, asks, pictures } = problemOf(made(id, 5));
      for (const text of [intro, ...asks.map(({ ask }) => ask)]) {
        expect(text.en + text.es).not.toMatch(/[{}]|undefined|NaN/);
      }
      expect(pictures.every(({ measures }) => measures.size > 0)).toBe(true);
    }
  });

  it('what is computed or read off a chart is not given away', () => {
    const day = problemOf(made('time-on-the-wall', 1));
    expect(day.givens.map(({ id }) => id)).toEqual([
      'air',
      'surface',
      'humidity',
      'prime',
      'hang',
      'finish',
    ]);
    expect(day.charts.map(({ id, rows }) => [id, rows.length])).toEqual([['touch-dry-time', 5]]);
  });
});

describe('a changed data sheet', () => {
  it('changes the answers', () => {
    const at = (spacing: string) =>
      made('fasteners-one-bar', 1, { 'fastener-spacing': spacing }).parts[0]!.right;
    expect(at('8 in')).not.toEqual(at('6 in'));
  });

  it('without any waste, the slip that forgets it is left out and problems are still made', () => {
    const none = made('rolls-with-waste', 1, { 'membrane-waste': '0 %' });
    expect(none.parts[0]!.slips.map(({ slip }) => slip.id)).not.toContain('waste-forgotten');
  });

  it('that leaves no problem says why', () => {
    const found = instanceOf(takeoff('stepped-base', { 'seam-lap': '2 in' }), 1);
    expect(found.ok).toBe(true);
    const none = instanceOf(takeoff('fasteners-along-wall', { 'bar-end-distance': '6 ft' }), 1);
    expect(none).toEqual({
      ok: false,
      error: { code: 'NO_INSTANCE', rejection: { kind: 'needs' } },
    });
  });

  it('that lacks a number of the family, or has it of another kind, does not fit', () => {
    const { family, sheet } = takeoff('fasteners-one-bar');
    const without = new Map(
      [...sheet.numbers].filter(([id]) => id !== ('fastener-spacing' as never)),
    );
    expect(takeoffOf(family, { ...sheet, numbers: without })).toMatchObject({
      ok: false,
      error: { code: 'UNKNOWN_NUMBER', number: 'fastener-spacing' },
    });
    const hours = sheet.numbers.get('conditioning-time' as never)!;
    const odd = new Map([...sheet.numbers, ['fastener-spacing' as never, hours] as const]);
    expect(takeoffOf(family, { ...sheet, numbers: odd })).toMatchObject({
      ok: false,
      error: { code: 'UNIT_MISMATCH', number: 'fastener-spacing' },
    });
  });
});

describe('no-regression', () => {
  // The seed of a worksheet must make the same sheet for ever.
  it('seed 9 of one bar is the problem it always was', () => {
    const one = made('fasteners-one-bar', 9);
    expect(problemOf(one).intro.en).toContain('97 1/4" long');
    expect(one.parts.map(({ right }) => right)).toMatchObject([
      { value: { n: 13n, d: 1n } },
      { value: { n: 16129n, d: 80000n } },
    ]);
  });
});
