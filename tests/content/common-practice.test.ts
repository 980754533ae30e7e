import { describe, expect, test } from 'vitest';
import { parseQuantity } from '#engine/measure/parse-quantity.ts';
import type { DataSheetId, MethodId } from '#engine/method/method.ts';
import { fixRule, judge } from '#engine/method/rule.ts';
import { openContent } from '#server/content.ts';

const content = openContent();
const sheet = content.dataSheets.get('epdm-generic' as DataSheetId)!;
const base = content.methods.get('base-of-wall' as MethodId)!;

const quantity = (text: string) => {
  const read = parseQuantity(text);
  if (!read.ok) throw new Error(text);
  return read.value;
};

/** Whether a value is right by the data sheet, in a weather. */
function isRight(number: string, value: string, weather: Readonly<Record<string, string>> = {}) {
  const { rule } = [...sheet.numbers].find(([id]) => id === number)![1];
  const conditions = Object.entries(weather).map(([id, text]) => [id, quantity(text)] as const);
  return judge(fixRule(rule, new Map(conditions) as never), quantity(value)).within;
}

/**
 * How a fully taped and clamped EPDM flashing is put in at the base of a wall: common practice, but for the
 * strap (16 gauge is 54 mil of design thickness: cold-formed steel, see `cfs-thickness` in the sources) and
 * the turn-up (`bia-28b-2005`). What is right stands before what is just not.
 */
const values: readonly (readonly [number: string, right: string, wrong: string])[] = [
  ['strap-thickness', '54 mil', '43 mil'],
  ['turn-up-height', '8 in', '7 3/4 in'],
  ['top-edge-tape-width', '1 1/2 in', '1 in'],
  ['release-angle', '45 deg', '90 deg'],
  ['sheet-run-max', '50 ft', '51 ft'],
  ['edge-setback', '1/2 in', '3/4 in'],
  ['roller-width', '1 1/2 in', '2 in'],
  ['fastener-spacing', '6 in', '5 in'],
  ['fastener-spacing', '8 in', '9 in'],
  ['mastic-setback', '1/2 in', '5/8 in'],
  ['seam-lap', '2 in', '1 1/2 in'],
  ['corner-lap', '2 in', '1 1/2 in'],
  ['storage-temperature', '60 °F', '59 °F'],
  ['storage-temperature', '80 °F', '81 °F'],
  ['cold-threshold', '40 °F', '39 °F'],
  ['substrate-protrusion', '0 in', '1/16 in'],
];

describe('common practice at the base of a wall', () => {
  test.each(values)('%s: %s is right and %s is not', (number, right, wrong) => {
    expect([isRight(number, right), isRight(number, wrong)]).toEqual([true, false]);
  });

  test('primer is dry to the touch after 2 to 3 minutes on a day that is neither cold nor damp', () => {
    const day = (temperature: string) => ({
      'surface-temperature': temperature,
      'relative-humidity': '50 %',
    });
    expect(isRight('touch-dry-time', '2 min', day('70 °F'))).toBe(true);
    expect(isRight('touch-dry-time', '1.9 min', day('70 °F'))).toBe(false);
    expect(isRight('touch-dry-time', '3 min', day('60 °F'))).toBe(true);
    expect(isRight('touch-dry-time', '2.9 min', day('60 °F'))).toBe(false);
  });

  test.each([
    ['fasten-strap', 'strap-thickness'],
    ['snap-line', 'turn-up-height'],
    ['cut-sheets', 'sheet-run-max'],
    ['tape-top-edge', 'top-edge-tape-width'],
    ['hang-sheet', 'release-angle'],
    ['roll-wall', 'roller-width'],
    ['carry-down', 'edge-setback'],
    ['lay-mastic', 'mastic-setback'],
    ['lay-over-sheet', 'seam-lap'],
  ])('%s asks for %s', (step, number) => {
    const { settings } = base.steps.find(({ id }) => id === step)!;
    expect(settings.map((setting) => setting.number)).toContain(number);
  });
});
