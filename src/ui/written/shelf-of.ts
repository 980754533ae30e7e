import type { MethodBundle } from '#engine/compile/method-bundle.ts';
import type { WrittenBundle } from '#engine/compile/written-bundle.ts';
import type { Shelf } from '#engine/marking/attempt-from.ts';

/** A method whose wall a question shows. */
export type ShownMethod = Pick<MethodBundle, 'method' | 'dataSheet'>;

/** All that the questions of a topic are asked and marked with. */
export const shelfOf = (bundle: WrittenBundle, shown: readonly ShownMethod[]): Shelf => ({
  methods: new Map(shown.map(({ method }) => [method.id, method])),
  dataSheets: new Map([
    ...bundle.dataSheets,
    ...shown.map(({ dataSheet }) => [dataSheet.id, dataSheet] as const),
  ]),
});
