import type { DataSheet } from '#engine/method/data-sheet.ts';
import type { NumberId } from '#engine/method/method.ts';
import { languages } from '#engine/text.ts';
import { namesIn } from '#engine/written/fill-in.ts';
import { nearestCure } from '#engine/compile/names.ts';
import type { Path, SourceFile } from '#engine/compile/source-file.ts';
import type { At } from './at.ts';
import { checkEqualNames, placeOfName } from './names-in-text.ts';
import type { QuestionShelf } from './shelf.ts';
import type { TextAt } from './texts-in.ts';

/** Every name in braces is a number of the data sheet, and stands in every language; whether it is so. */
export function checkNumbers(
  at: At,
  texts: readonly TextAt[],
  sheet: DataSheet,
  { brokenNumbers }: QuestionShelf,
): boolean {
  const before = at.file.faults.length;
  for (const [below, text] of texts) {
    const path = [...at.path, ...below];
    const known = languages.map((language) =>
      namesIn(text[language]).every((name) =>
        isNumber(at.file, [...path, language], name, sheet, brokenNumbers),
      ),
    );
    if (known.every(Boolean)) checkEqualNames(at.file, path, text);
  }
  return at.file.faults.length === before;
}

function isNumber(
  file: SourceFile,
  path: Path,
  name: string,
  sheet: DataSheet,
  broken: ReadonlySet<NumberId>,
): boolean {
  const number = sheet.numbers.get(name as NumberId);
  const place = placeOfName(file, path, name);
  if (number?.rule.kind === 'by') {
    const message = `"${name}" depends on the weather, which no question states.`;
    file.fault('UNSTATED_CONDITION', place, message, 'Write the quantity instead: 6 min.');
    return false;
  }
  if (number || broken.has(name as NumberId)) return number !== undefined;
  const message = `There is no number "${name}" that could stand here.`;
  file.fault('UNKNOWN_NAME', place, message, nearestCure(name, sheet.numbers.keys()));
  return false;
}
