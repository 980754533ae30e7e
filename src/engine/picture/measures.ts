import { amountIn, quantity } from '#engine/measure/conversion.ts';
import { formatLength } from '#engine/measure/format-length.ts';
import { formatQuantity } from '#engine/measure/format-quantity.ts';
import { type Quantity, isA } from '#engine/measure/quantity.ts';
import { approximate, isWhole, rational } from '#engine/measure/rational.ts';
import type { Drawn, Layer, LayerMeasure, Zone } from '#engine/method/drawing.ts';
import type { SettingId } from '#engine/method/method.ts';
import { limitsOf } from '#engine/method/offered.ts';
import { middleOf } from '#engine/method/rule.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import type { Language, Text } from '#engine/text.ts';
import type { Applied, Planned } from './applied.ts';

/** What the settings of the work, or the data sheet where they are silent, make of a measure. */
export type Measures = {
  readonly sequence: Sequence;
  readonly applied: readonly Applied[];
};

/** The setting of this very layer, where one was given. */
export function given(
  { takes, placed }: Planned,
  measure: LayerMeasure,
): { readonly setting: SettingId; readonly value: Quantity } | undefined {
  const setting = takes.get(measure) as SettingId | undefined;
  const value = setting && placed?.settings.get(setting);
  return setting && value ? { setting, value } : undefined;
}

/** In inches, or degrees. What nobody set is as the same layer elsewhere, then as recommended. */
export function measureOf(
  all: Measures,
  one: Planned,
  measure: LayerMeasure,
  otherwise: number,
): number {
  const own = given(one, measure)?.value ?? (one.takes.has(measure) && aimOf(all, one, measure));
  if (own) return drawn(own);
  const alike = all.applied.findLast(
    ({ layer, takes }) => layer === one.layer && takes.has(measure),
  );
  const found =
    (alike && given(alike, measure)?.value) ?? aimOf(all, { layer: one.layer }, measure);
  return found ? drawn(found) : otherwise;
}

const edgeZones: readonly Zone[] = [
  'wall',
  'top-edge',
  'everywhere',
  'second-side',
  'shelf',
  'transition',
  'ends',
  'jambs',
];
const edgeLayers: readonly Layer[] = [
  'snap-line',
  'clean-face',
  'primer',
  'tape',
  'membrane',
  'back-dam',
];

/** How high the sheet turns up: as a line was snapped or a sheet set, else as recommended. */
export function turnUp(all: Measures, otherwise: number): number {
  const sets = ({ layer, zone, takes }: Drawn): boolean =>
    edgeLayers.includes(layer) && edgeZones.includes(zone) && takes.has('height');
  const set = all.applied.findLast((each) => sets(each) && given(each, 'height'));
  const value = set ? given(set, 'height')?.value : aimWhere(all.sequence, sets, 'height');
  return value ? drawn(value) : otherwise;
}

/** The farthest that the simulator lets a measure be set; what the view must leave room for. */
export function farthest(sequence: Sequence, measure: LayerMeasure, layer: Layer): number {
  const ends = sequence.steps.flatMap(({ draws, asks }) =>
    draws
      .filter((each) => each.layer === layer)
      .flatMap(({ takes }) => asks.find(({ id }) => id === takes.get(measure)) ?? [])
      .flatMap(({ sheetNumber }) =>
        sheetNumber.entry ? drawn(limitsOf(sheetNumber.entry).to) : [],
      ),
  );
  return Math.max(0, ...ends);
}

const aimOf = (
  { sequence }: Measures,
  one: Pick<Planned, 'layer'> & Partial<Planned>,
  measure: LayerMeasure,
): Quantity | undefined =>
  aimWhere(
    sequence,
    ({ layer, zone }, step) =>
      layer === one.layer && (!one.card || (step === one.card && zone === one.zone)),
    measure,
  );

function aimWhere(
  { steps }: Sequence,
  which: (drawn: Drawn, step: string) => boolean,
  measure: LayerMeasure,
): Quantity | undefined {
  for (const { id, draws, asks } of steps) {
    for (const each of draws) {
      const ask = which(each, id) && asks.find((one) => one.id === each.takes.get(measure));
      if (ask) return ask.sheetNumber.aim ?? middleOf(ask.rule);
    }
  }
  return undefined;
}

/** A length in inches, an angle in degrees, a ratio as it is. */
export function drawn(value: Quantity): number {
  if (isA(value, 'length')) return approximate(amountIn(value, 'in'));
  if (isA(value, 'angle')) return approximate(amountIn(value, '°'));
  return approximate(value.value);
}

const fine = quantity(rational(1, 32), 'in');

/** As the trade writes it on a drawing: inches to 1/32, thinner stuff in mils. */
export const measureText = (value: Quantity): Text => ({
  en: written(value, 'en'),
  es: written(value, 'es'),
});

function written(value: Quantity, language: Language): string {
  if (isA(value, 'angle')) return formatQuantity(value, '°', language);
  if (isA(value, 'ratio')) return formatQuantity(value, '%', language);
  if (!isA(value, 'length')) return '';
  const inches = amountIn(value, 'in');
  const thin = !isWhole(inches.mul(32n)) && inches.lt(rational(1, 4));
  if (thin) return formatQuantity(value, 'mil', language);
  return formatLength(value, { system: 'us', style: 'inches', nearest: fine });
}
