import type { Decoy, DecoyId, SourceId } from '#engine/method/method.ts';
import { entries, record } from './group.ts';
import { mapped, type Reader } from './reader.ts';
import { when } from './site.ts';
import { hazardIds, rework, severity } from './step.ts';
import { idOf, text } from './words.ts';

const decoy = record({
  say: text,
  when,
  because: text,
  severity,
  hazards: hazardIds,
  rework,
  source: idOf<SourceId>('source'),
});

export const decoys: Reader<readonly Decoy[]> = mapped(
  entries(decoy, 'a group of decoys, each under its id'),
  (found) => found.map(([id, value]) => ({ id: id as DecoyId, ...value })),
);
