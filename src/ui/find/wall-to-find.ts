import { type FaultyWall, faultyWall } from '#engine/inspection/faulty-wall.ts';
import type { MethodBundle } from '#engine/compile/method-bundle.ts';
import { anySite } from '#engine/method/bench.ts';
import { type Sequence, sequenceOf } from '#engine/method/sequence.ts';
import { randomFrom } from '#engine/random.ts';

export type WallToFind = { readonly sequence: Sequence; readonly faulty: FaultyWall };

/** The same seed gives the same site and the same faults. Undefined where none could be found. */
export function wallToFind(
  { method, dataSheet }: Pick<MethodBundle, 'method' | 'dataSheet'>,
  seed: string,
): WallToFind | undefined {
  const site = anySite(method.site, randomFrom(`${seed}/site`));
  const sequence = sequenceOf(method, dataSheet, site);
  const faulty = sequence.ok ? faultyWall(sequence.value, seed) : undefined;
  return sequence.ok && faulty ? { sequence: sequence.value, faulty } : undefined;
}
