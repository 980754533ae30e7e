import type { DataSheet } from '#engine/method/data-sheet.ts';
import type { DataSheetId, Method, MethodId, NumberId } from '#engine/method/method.ts';
import type { SheetDraft, SheetDrafts } from '#engine/compile/data-sheet.ts';
import type { Opened } from '#engine/compile/opened.ts';
import type { Written } from '#engine/compile/read-files.ts';

/** What questions are checked against: methods and sheets as far as they could be read. */
export type QuestionShelf = {
  readonly methods: ReadonlyMap<MethodId, Method>;
  /** Those too that have faults, of which nothing more is said here. */
  readonly methodIds: ReadonlySet<string>;
  /** Without the numbers that could not be read. */
  readonly dataSheets: ReadonlyMap<DataSheetId, DataSheet>;
  readonly sheetIds: ReadonlySet<DataSheetId>;
  /** Numbers that are named right, though they could not be read. */
  readonly brokenNumbers: ReadonlySet<NumberId>;
  /** The sheet that methods are written on: where nothing else is said, of questions too. */
  readonly usualSheet: DataSheetId | undefined;
};

export function questionShelf(
  { methods, sheetIds }: Pick<Written, 'methods' | 'sheetIds'>,
  drafts: SheetDrafts,
): QuestionShelf {
  const sound = [...methods].filter(([, { file }]) => file.faults.length === 0);
  const broken = [...drafts.values()].flatMap(({ numbers }) =>
    [...numbers].flatMap(([id, number]) => (number ? [] : [id])),
  );
  return {
    methods: new Map(sound.map(([id, { value }]) => [id, value])),
    methodIds: new Set(methods.keys()),
    dataSheets: new Map([...drafts].map(([id, draft]) => [id, readable(draft)])),
    sheetIds,
    brokenNumbers: new Set(broken),
    usualSheet: usualSheet([...methods.values()]),
  };
}

function readable(draft: SheetDraft): DataSheet {
  const numbers = [...draft.numbers].flatMap(([id, number]) =>
    number ? [[id, number] as const] : [],
  );
  return { ...draft, numbers: new Map(numbers) };
}

/** The one that most methods name, and of equals the first. */
function usualSheet(methods: readonly Opened<Method>[]): DataSheetId | undefined {
  const counts = new Map<DataSheetId, number>();
  for (const { value } of methods) {
    counts.set(value.dataSheet, (counts.get(value.dataSheet) ?? 0) + 1);
  }
  return [...counts].toSorted(([, a], [, b]) => b - a)[0]?.[0];
}
