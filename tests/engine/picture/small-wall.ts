import { quantity } from '#engine/measure/conversion.ts';
import { type Rational, rational } from '#engine/measure/rational.ts';
import type { UnitId } from '#engine/measure/units.ts';
import type { Drawn, LayerMeasure } from '#engine/method/drawing.ts';
import type { Rule } from '#engine/method/data-sheet.ts';
import type { Method, SettingId, Step } from '#engine/method/method.ts';
import { type Sequence, sequenceOf } from '#engine/method/sequence.ts';
import type { Site } from '#engine/method/site.ts';
import type { Text } from '#engine/text.ts';
import type { Placed } from '#engine/picture/work.ts';

export const text = (words: string): Text => ({ en: words, es: words });

type Layers = readonly [
  layer: Drawn['layer'],
  zone: Drawn['zone'],
  takes?: readonly LayerMeasure[],
][];

const asked: Readonly<Record<LayerMeasure, Rule>> = {
  height: { kind: 'at-least', value: quantity(8, 'in') },
  width: { kind: 'at-least', value: quantity(2, 'in') },
  spacing: { kind: 'between', low: quantity(6, 'in'), high: quantity(8, 'in') },
  lap: { kind: 'at-least', value: quantity(2, 'in') },
  setback: { kind: 'at-most', value: quantity(rational(1, 2), 'in') },
  projection: { kind: 'at-least', value: quantity(rational(1, 4), 'in') },
  thickness: { kind: 'at-least', value: quantity(54, 'mil') },
  slope: { kind: 'at-least', value: quantity(6, '%') },
  release: { kind: 'about', value: quantity(45, '°'), within: quantity(15, '°') },
};

const step = (id: string, layers: Layers): Step => ({
  id: id as Step['id'],
  say: text(id),
  when: new Map(),
  keyPoints: [],
  reason: text('because'),
  severity: 'critical',
  takes: quantity(1, 'min'),
  after: [],
  wait: undefined,
  changes: new Map(),
  settings: layers.flatMap(([, , takes = []]) =>
    takes.map((measure) => ({
      id: measure as string as SettingId,
      number: measure as never,
      ask: text(measure),
      because: text('because'),
      severity: 'critical' as const,
    })),
  ),
  hazards: [],
  draws: layers.map(([layer, zone, takes = []]) => ({
    layer,
    zone,
    takes: new Map(takes.map((measure) => [measure, measure])),
  })),
  rework: { undo: 'in-place', say: text('mend') },
  source: 'common-practice' as never,
});

/** A method of steps that only draw, on the assembly and site of one's choice. */
export function smallWall(
  steps: Readonly<Record<string, Layers>>,
  more: { readonly assembly?: Method['assembly']; readonly site?: Site } = {},
): Sequence {
  const site = more.site ?? {};
  const method: Method = {
    id: 'small-wall' as Method['id'],
    title: text('Small wall'),
    purpose: text('to try'),
    governs: text('nothing'),
    dataSheet: 'small' as Method['dataSheet'],
    assembly: more.assembly ?? 'wall-base',
    site: Object.entries(site).map(([id, value]) => ({
      id,
      name: text(id),
      values: [{ id: value, name: text(value), conditions: new Map() }],
    })),
    steps: Object.entries(steps).map(([id, layers]) => step(id, layers)),
    decoys: [
      {
        id: 'nail-toe' as never,
        say: text('Nail the toe'),
        when: new Map(),
        because: text('holes'),
        severity: 'critical',
        hazards: [],
        rework: { undo: 'tear-out', say: text('tear out') },
        source: 'common-practice' as never,
      },
    ],
    water: {
      places: [],
      joints: [
        {
          id: 'hole' as never,
          name: text('hole'),
          from: 'cavity' as never,
          to: 'wall' as never,
          when: new Map(),
          zone: 'toe',
          keptBy: [],
          spoiltBy: ['nail-toe' as never],
        },
      ],
    },
  };
  const numbers = (Object.keys(asked) as LayerMeasure[]).map((measure) => [
    measure as never,
    {
      id: measure as never,
      name: text(measure),
      dimension: 'length' as const,
      rule: asked[measure],
      aim: undefined,
      entry: undefined,
      because: text('because'),
      source: 'common-practice' as never,
    },
  ]);
  const sheet = {
    id: 'small' as never,
    title: text('Small'),
    note: undefined,
    numbers: new Map(numbers as never),
  };
  const made = sequenceOf(method, sheet as never, site);
  if (!made.ok) throw new Error(made.error.code);
  return made.value;
}

export const card = (
  id: string,
  settings: Readonly<Record<string, readonly [amount: number | Rational, unit: UnitId]>> = {},
  state: Placed['state'] = 'dry',
): Placed => ({
  card: id,
  state,
  settings: new Map(
    Object.entries(settings).map(([name, [amount, unit]]) => [
      name as SettingId,
      quantity(amount, unit),
    ]),
  ),
});
