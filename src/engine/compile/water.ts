import {
  failures,
  type DecoyId,
  type Joint,
  type JointId,
  type Keeper,
  type Place,
  type PlaceId,
  type SettingId,
  type StepId,
  type WaterTest,
} from '#engine/method/method.ts';
import { zone } from './draws.ts';
import { entries, record } from './group.ts';
import { list } from './list.ts';
import { mapped, optional, wrongShape, type Reader } from './reader.ts';
import { when } from './site.ts';
import { flag, idOf, oneOf, text } from './words.ts';

const place = record({ name: text, wet: optional(flag, false), dry: optional(flag, false) });

const onOneSide: Reader<Omit<Place, 'id'>> = {
  blank: { name: place.blank.name, side: 'between' },
  read: (here) => {
    const { name, wet, dry } = place.read(here);
    if (wet && dry) {
      wrongShape(here, 'a place that is wet, or dry, or neither', 'Keep "wet" or "dry", not both.');
    }
    return { name, side: wet === dry ? 'between' : wet ? 'wet' : 'dry' };
  },
};

const places: Reader<readonly Place[]> = mapped(
  entries(onOneSide, 'a group of places, each under its id'),
  (found) => found.map(([id, value]) => ({ id: id as PlaceId, ...value })),
);

const keeper: Reader<Keeper> = record({
  step: idOf<StepId>('step'),
  fails: optional(
    list(oneOf(failures, 'UNKNOWN_FAILURE', 'way for a step to fail'), 'ways to fail'),
    failures,
  ),
  setting: optional(idOf<SettingId>('setting'), undefined),
});

const joint = record({
  name: text,
  from: idOf<PlaceId>('place'),
  to: idOf<PlaceId>('place'),
  when,
  zone,
  'kept-by': list(keeper, 'steps that keep it shut'),
  'spoilt-by': optional(list(idOf<DecoyId>('decoy'), 'decoys'), []),
});

const joints: Reader<readonly Joint[]> = mapped(
  entries(joint, 'a group of joints, each under its id'),
  (found) =>
    found.map(([id, { 'kept-by': keptBy, 'spoilt-by': spoiltBy, ...rest }]) => ({
      id: id as JointId,
      ...rest,
      keptBy,
      spoiltBy,
    })),
);

export const waterTest: Reader<WaterTest> = record({ places, joints });
