import type { DataSheet, SheetNumber } from '#engine/method/data-sheet.ts';
import type { DataSheetId, NumberId } from '#engine/method/method.ts';
import type { Opened } from './opened.ts';
import { nearestCure } from './names.ts';
import { numberFrom, writtenNumber, type Base } from './number.ts';
import { entries, record } from './group.ts';
import { optional } from './reader.ts';
import { placeAt } from './source-file.ts';
import { idOf, text } from './words.ts';

export const writtenSheet = record({
  title: text,
  'based-on': optional(idOf<DataSheetId>('data sheet'), undefined),
  note: optional(text, undefined),
  numbers: entries(writtenNumber, 'a group of numbers, each under its id'),
});

export type WrittenSheet = Opened<typeof writtenSheet.blank>;

/** A sheet whose numbers that could not be read are `null`, so that others may still name them. */
export type SheetDraft = Omit<DataSheet, 'numbers'> & {
  readonly numbers: ReadonlyMap<NumberId, SheetNumber | null>;
};

/** A sheet that could not be read, or starts from one that could not, is left out of the drafts. */
export type SheetDrafts = ReadonlyMap<DataSheetId, SheetDraft>;

/** Puts what each sheet changes on top of what it starts from. */
export function draftSheets(written: ReadonlyMap<DataSheetId, WrittenSheet>): SheetDrafts {
  const drafts = new Map<DataSheetId, SheetDraft>();
  for (const chain of [...written.keys()].map((id) => chainFrom(id, written))) {
    for (const id of chain.toReversed()) {
      const sheet = written.get(id);
      if (sheet && !drafts.has(id)) drafts.set(id, draftOf(id, sheet, drafts));
    }
  }
  return drafts;
}

/** A sheet, the one that it starts from, and so on, until there is no other. */
export function chainFrom(
  id: DataSheetId,
  written: ReadonlyMap<DataSheetId, WrittenSheet>,
): readonly DataSheetId[] {
  const chain: DataSheetId[] = [];
  for (let at: DataSheetId | undefined = id; at !== undefined && !chain.includes(at);) {
    chain.push(at);
    at = written.get(at)?.value['based-on'];
  }
  return chain;
}

function draftOf(id: DataSheetId, { file, value }: WrittenSheet, drafts: SheetDrafts): SheetDraft {
  const { title, note, numbers, 'based-on': basedOn } = value;
  const base = basedOn === undefined ? undefined : drafts.get(basedOn);
  const unknown: Base = basedOn !== undefined && !base ? null : undefined;
  const changed = numbers.map(([name, each]) => {
    const numberId = name as NumberId;
    const below = base ? base.numbers.get(numberId) : unknown;
    return [numberId, numberFrom(file, numberId, each, below)] as const;
  });
  return { id, title, note, numbers: new Map([...(base?.numbers ?? []), ...changed]) };
}

/** Each sheet starts from one that there is, and none from itself, however far around. */
export function checkBases(
  written: ReadonlyMap<DataSheetId, WrittenSheet>,
  known: ReadonlySet<DataSheetId>,
): void {
  for (const [id, { file, value }] of written) {
    const base = value['based-on'];
    if (base === undefined || base === '') continue;
    const place = placeAt(file, ['based-on']);
    const chain = chainFrom(id, written);
    if (!known.has(base)) {
      const message = `There is no data sheet "${base}".`;
      file.fault('UNKNOWN_DATA_SHEET', place, message, nearestCure(base, known));
    } else if (written.get(chain.at(-1)!)?.value['based-on'] === id && id === smallest(chain)) {
      const way = [...chain, id].join(', from ');
      const message = `These sheets start from each other: ${way}.`;
      file.fault(
        'CIRCULAR_SHEETS',
        place,
        message,
        'Let one of them state all its numbers itself.',
      );
    }
  }
}

const smallest = (ids: readonly string[]): string => ids.toSorted()[0] ?? '';
