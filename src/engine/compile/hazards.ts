import type { HazardId, SourceId } from '#engine/method/method.ts';
import type { Hazard } from './content.ts';
import { entries, record } from './group.ts';
import { mapped, type Reader } from './reader.ts';
import { idOf, text } from './words.ts';

const hazard = record({ name: text, caution: text, source: idOf<SourceId>('source') });

export const hazards: Reader<readonly Hazard[]> = mapped(
  entries(hazard, 'a group of hazards, each under its id'),
  (found) => found.map(([id, value]) => ({ ...value, id: id as HazardId })),
);
