import {
  keyAt,
  placeAt,
  type Path,
  type Place,
  type SourceFile,
} from '#engine/compile/source-file.ts';
import { languages, type Text } from '#engine/text.ts';
import { namesIn } from '#engine/written/fill-in.ts';

/** Where a name in braces stands; the whole text where it cannot be told. */
export function placeOfName(file: SourceFile, path: Path, name: string): Place {
  const whole = placeAt(file, path);
  const from = file.text.indexOf(`{${name}}`, whole.from);
  return from >= 0 && from < whole.to ? { from, to: from + name.length + 2 } : whole;
}

/** What one language names, the others do. */
export function checkEqualNames(file: SourceFile, path: Path, text: Text): void {
  const [first, ...others] = languages.map((language) => new Set(namesIn(text[language])));
  others.forEach((other, place) => {
    const [odd] = first!.symmetricDifference(other);
    if (odd === undefined) return;
    const message = `"{${odd}}" stands in one language only.`;
    const cure = 'Put the same names into the text in every language.';
    const at = keyAt(file, [...path, languages[place + 1]!]);
    file.fault('UNEQUAL_NAMES', at, message, cure);
  });
}
