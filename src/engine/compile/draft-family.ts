import type { DataSheet } from '#engine/method/data-sheet.ts';
import type { DataSheetId } from '#engine/method/method.ts';
import type { Family, FamilyId, SheetName } from '#engine/takeoff/family.ts';
import type { Formula } from '#engine/takeoff/formula.ts';
import type { SheetDrafts } from './data-sheet.ts';
import { draftGiven } from './draft-given.ts';
import { namesOf, termNamed, type Names } from './draft-names.ts';
import { draftPart } from './draft-part.ts';
import { draftPictures } from './draft-picture.ts';
import { checkTexts } from './draft-texts.ts';
import type { WrittenFamily } from './family.ts';
import { condition } from './formula.ts';
import { checkProblems } from './good-problem.ts';
import { nearestCure } from './names.ts';
import type { Opened } from './opened.ts';
import { keyAt, placeAt, type SourceFile } from './source-file.ts';

/** Every family without a fault of its own; each was tried on its data sheet. */
export function draftFamilies(
  written: ReadonlyMap<FamilyId, Opened<WrittenFamily>>,
  drafts: SheetDrafts,
  sheetIds: ReadonlySet<DataSheetId>,
): ReadonlyMap<FamilyId, Family> {
  const families = new Map<FamilyId, Family>();
  for (const [id, { file, value }] of written) {
    const sheet = drafts.get(value['data-sheet']);
    if (!sheet) checkSheetName(file, value['data-sheet'], sheetIds);
    const names = sheet && namesOf(file, sheet);
    const family = names && draftFamily(names, id, value);
    if (!family || file.faults.length > 0) continue;
    const isSheetRead = [...sheet.numbers.values()].every((number) => number !== null);
    if (isSheetRead) checkProblems(file, family, sheet as DataSheet);
    families.set(id, family);
  }
  return families;
}

function checkSheetName(
  file: SourceFile,
  dataSheet: DataSheetId,
  known: ReadonlySet<DataSheetId>,
): void {
  if (dataSheet === '' || known.has(dataSheet)) return;
  const message = `There is no data sheet "${dataSheet}".`;
  const place = placeAt(file, ['data-sheet']);
  file.fault('UNKNOWN_DATA_SHEET', place, message, nearestCure(dataSheet, known));
}

function draftFamily(names: Names, id: FamilyId, written: WrittenFamily): Family | null {
  const givens = written.givens.map(([given, each]) => draftGiven(names, given, each));
  const parts = written.parts.map(([part, each]) => draftPart(names, part, each));
  const needs = written.needs.map(({ that, say }) => ({
    that: that && condition(names, that),
    say,
  }));
  const pictures = draftPictures(names, written);
  const where = written.where.map((each) => each && condition(names, each));
  checkTexts(names, written);
  checkUnused(names, written);
  const conditions = [...where, ...needs.map(({ that }) => that)];
  const isWhole = [...pictures, ...givens, ...parts, ...conditions].every((each) => each !== null);
  if (!isWhole) return null;
  const sheetNumbers = sheetNamesIn(names);
  return {
    id,
    title: written.title,
    topic: written.topic,
    dataSheet: written['data-sheet'],
    source: written.source,
    intro: written.intro,
    pictures: pictures.filter((picture) => picture !== null),
    givens: givens.filter((given) => given !== null),
    needs: needs.map(({ that, say }) => ({ that: that as Formula, say })),
    where: where.filter((each) => each !== null),
    parts: parts.filter((part) => part !== null),
    sheetNumbers,
    terms: names.terms.size,
  };
}

function checkUnused({ file, read }: Names, { givens }: WrittenFamily): void {
  for (const [id] of givens) {
    if (read.has(id)) continue;
    const message = `Nothing asks for "${id}".`;
    const cure = `Use it in a formula, or write {${id}} in a text; else leave it out.`;
    file.fault('UNUSED_GIVEN', keyAt(file, ['givens', id]), message, cure);
  }
}

/** What formulas, texts and the picture read of the data sheet, in the order of the sheet. */
function sheetNamesIn(names: Names): readonly SheetName[] {
  return [...names.sheet.numbers.keys()]
    .filter((number) => names.read.has(number))
    .flatMap((number) => {
      const term = termNamed(names, number);
      return term ? [{ number, term }] : [];
    });
}
