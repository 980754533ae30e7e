import { assemblies } from '#engine/method/drawing.ts';
import type { DataSheetId, Method, MethodId } from '#engine/method/method.ts';
import { decoys } from './decoy.ts';
import { record } from './group.ts';
import { mapped, optional, type Reader } from './reader.ts';
import { siteQuestions } from './site.ts';
import { steps } from './step.ts';
import { waterTest } from './water.ts';
import { idOf, oneOf, text } from './words.ts';

const written = record({
  title: text,
  purpose: text,
  governs: text,
  'data-sheet': idOf<DataSheetId>('data sheet'),
  assembly: oneOf(assemblies, 'UNKNOWN_ASSEMBLY', 'assembly of the picture'),
  site: siteQuestions,
  steps,
  decoys: optional(decoys, []),
  water: waterTest,
});

export const method = (id: MethodId): Reader<Method> =>
  mapped(written, ({ 'data-sheet': dataSheet, ...rest }) => ({ id, ...rest, dataSheet }));
