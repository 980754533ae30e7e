import type { ConditionalRule, Curve, SheetNumber } from '#engine/method/data-sheet.ts';
import type { NumberId } from '#engine/method/method.ts';
import type { WeatherCondition } from '#engine/method/site.ts';
import type { Text } from '#engine/text.ts';
import { inEach } from './fill-text.ts';
import { usualStyle, writeQuantity } from './style.ts';

/** A number of the data sheet by the weather: straight lines between the rows, flat beyond them. */
export type Chart = {
  readonly id: NumberId;
  readonly name: Text;
  readonly by: WeatherCondition;
  readonly rows: readonly Row[];
  /** What the value is multiplied by. */
  readonly times: { readonly by: WeatherCondition; readonly rows: readonly Row[] } | undefined;
};

export type Row = { readonly at: Text; readonly value: Text };

/** What a chart goes by. */
export const conditionNames: Readonly<Record<WeatherCondition, Text>> = {
  'air-temperature': { en: 'Air', es: 'Aire' },
  'surface-temperature': { en: 'Surface', es: 'Superficie' },
  'relative-humidity': { en: 'Relative humidity', es: 'Humedad relativa' },
};

export const chartOf = ({ id, name }: SheetNumber, { curve, times }: ConditionalRule): Chart => ({
  id,
  name,
  by: curve.by,
  rows: rowsOf(curve, undefined),
  times: times && { by: times.by, rows: rowsOf(times, '1') },
});

const rowsOf = ({ rows }: Curve, style: string | undefined): readonly Row[] =>
  rows.map(({ at, value }) => ({
    at: inEach((language) => writeQuantity(at, usualStyle(at), language)),
    value: inEach((language) => writeQuantity(value, style ?? usualStyle(value), language)),
  }));
