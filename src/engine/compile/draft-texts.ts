import { languages, type Text } from '#engine/text.ts';
import { namesAskedIn } from '#engine/takeoff/fill-text.ts';
import type { Names } from './draft-names.ts';
import type { WrittenFamily } from './family.ts';
import { nearestCure } from './names.ts';
import { keyAt, placeAt, type Path, type Place, type SourceFile } from './source-file.ts';

/** A text that numbers are put into, where it stands, and which answers it may tell. */
type Filled = { readonly path: Path; readonly text: Text; readonly tells: readonly string[] };

/** What stands in braces is a given or a number of the data sheet; a reason may tell an answer too. */
export function checkTexts(names: Names, written: WrittenFamily): void {
  for (const filled of filledTexts(written)) {
    if (checkNames(names, written, filled)) checkEqual(names.file, filled);
  }
}

function filledTexts({ intro, needs, parts }: WrittenFamily): readonly Filled[] {
  const ids = parts.map(([id]) => id);
  return [
    { path: ['intro'], text: intro, tells: [] },
    ...needs.map(({ say }, place) => ({ path: ['needs', place, 'say'], text: say, tells: [] })),
    ...parts.flatMap(([id, { ask, why, slips }], place) => [
      { path: ['parts', id, 'ask'], text: ask, tells: [] },
      ...(why ? [{ path: ['parts', id, 'why'], text: why, tells: ids.slice(0, place) }] : []),
      ...slips.map(([slip, { tell }]) => ({
        path: ['parts', id, 'slips', slip, 'tell'],
        text: tell,
        tells: [],
      })),
    ]),
  ];
}

/** Whether there is everything that the text names. */
function checkNames(
  names: Names,
  { givens }: WrittenFamily,
  { path, text, tells }: Filled,
): boolean {
  let sound = true;
  const known = new Set([...givens.map(([id]) => id), ...tells, ...names.sheet.numbers.keys()]);
  for (const language of languages) {
    for (const name of namesAskedIn(text, language)) {
      names.read.add(name);
      if (known.has(name)) continue;
      sound = false;
      const place = placeOfName(names.file, [...path, language], name);
      const message = `There is no “${name}” that could stand here.`;
      const cure = nearestCure(name, [...givens.map(([id]) => id), ...tells]);
      names.file.fault('UNKNOWN_NAME', place, message, cure);
    }
  }
  return sound;
}

function placeOfName(file: SourceFile, path: Path, name: string): Place {
  const whole = placeAt(file, path);
  const from = file.text.indexOf(`{${name}}`, whole.from);
  return from >= 0 && from < whole.to ? { from, to: from + name.length + 2 } : whole;
}

function checkEqual(file: SourceFile, { path, text }: Filled): void {
  const [first, ...others] = languages.map((language) => new Set(namesAskedIn(text, language)));
  others.forEach((other, place) => {
    const odd =
      [...(first ?? [])].find((name) => !other.has(name)) ??
      [...other].find((name) => !first?.has(name));
    if (odd === undefined) return;
    const language = languages[place + 1]!;
    const message = `“{${odd}}” stands in one language only.`;
    const cure = 'Put the same numbers into the text in every language.';
    file.fault('UNEQUAL_NAMES', keyAt(file, [...path, language]), message, cure);
  });
}
