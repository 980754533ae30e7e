import type { Method } from '#engine/method/method.ts';
import { canMeet } from './condition.ts';
import { keyAt, placeAt, type SourceFile } from './source-file.ts';

/** The water has one place to come from, one or more to stay out of, and joints between. */
export function checkPlaces(file: SourceFile, { water }: Method): void {
  const path = ['water', 'places'];
  const wet = water.places.filter(({ side }) => side === 'wet');
  const [first, ...others] = wet;
  if (!first) {
    const cure = 'Add "wet: true" to the place where the water comes from.';
    file.fault('NO_WET_PLACE', keyAt(file, path), 'No place is wet.', cure);
  }
  for (const { id } of others) {
    const message = `"${id}" is wet beside "${first!.id}".`;
    const cure = 'Keep one wet place, and let joints lead from it to the others.';
    file.fault('TWO_WET_PLACES', keyAt(file, [...path, id]), message, cure);
  }
  if (!water.places.some(({ side }) => side === 'dry')) {
    const cure = 'Add "dry: true" to each place that water must not reach.';
    file.fault('NO_DRY_PLACE', keyAt(file, path), 'No place is dry.', cure);
  }
  checkEnds(file, { water });
}

function checkEnds(file: SourceFile, { water }: Pick<Method, 'water'>): void {
  const { places, joints } = water;
  for (const { id } of joints.filter(({ from, to }) => from === to && from !== '')) {
    const message = `"${id}" leads from a place to the same place.`;
    const cure = 'Name the place that the water gets into.';
    file.fault('JOINT_TO_ITSELF', placeAt(file, ['water', 'joints', id, 'to']), message, cure);
  }
  const known = new Set(places.map(({ id }) => id));
  const joined = new Set(joints.flatMap(({ from, to }) => [from, to]));
  // A misspelt end has had its own fault, and most likely means the place that seems left out.
  if ([...joined].some((id) => !known.has(id))) return;
  for (const { id } of places.filter((place) => !joined.has(place.id))) {
    const message = `No joint leads into or out of "${id}".`;
    const cure = 'Add the joint that lets water there, or leave the place out.';
    file.fault('UNCONNECTED_PLACE', keyAt(file, ['water', 'places', id]), message, cure);
  }
}

/** What keeps or spoils a joint can be on a wall that has the joint. */
export function checkKeepers(file: SourceFile, { site, steps, decoys, water }: Method): void {
  const whenOf = new Map<string, Method['steps'][number]['when']>(
    [...steps, ...decoys].map(({ id, when }) => [id, when]),
  );
  for (const joint of water.joints) {
    const path = ['water', 'joints', joint.id];
    const named = [
      ...joint.keptBy.map(
        ({ step }, index) => [[...path, 'kept-by', index, 'step'], step] as const,
      ),
      ...joint.spoiltBy.map((decoy, index) => [[...path, 'spoilt-by', index], decoy] as const),
    ];
    for (const [at, id] of named) {
      const when = whenOf.get(id);
      if (!when || canMeet(site, joint.when, when)) continue;
      const message = `No site has "${id}" and this joint together.`;
      file.fault(
        'NEVER_TOGETHER',
        placeAt(file, at),
        message,
        'Change one "when:", or leave it out.',
      );
    }
  }
}
