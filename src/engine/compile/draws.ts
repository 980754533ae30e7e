import { layerMeasures, layers, zones, type Drawn } from '#engine/method/drawing.ts';
import type { SettingId } from '#engine/method/method.ts';
import { choices, record } from './group.ts';
import { list } from './list.ts';
import { optional, type Reader } from './reader.ts';
import { idOf, oneOf } from './words.ts';

export const zone = oneOf(zones, 'UNKNOWN_ZONE', 'zone of the picture');

const takes = choices(layerMeasures, 'UNKNOWN_MEASURE', 'measure of a layer', () =>
  idOf<SettingId>('setting'),
);

/** What a step puts on the picture. */
export const draws: Reader<readonly Drawn[]> = list(
  record({
    layer: oneOf(layers, 'UNKNOWN_LAYER', 'layer of the picture'),
    zone,
    takes: optional(takes, new Map()),
  }),
  'layers with their zones',
);
