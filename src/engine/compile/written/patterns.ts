import { record } from '#engine/compile/group.ts';
import { nearestCure } from '#engine/compile/names.ts';
import type { Opened } from '#engine/compile/opened.ts';
import type { Reader } from '#engine/compile/reader.ts';
import { text } from '#engine/compile/words.ts';
import { languages, type Text } from '#engine/text.ts';
import { namesIn } from '#engine/written/fill-in.ts';
import { patternNames, type PatternId, type Patterns } from '#engine/written/patterns.ts';
import { checkEqualNames, placeOfName } from './names-in-text.ts';

const ids = Object.keys(patternNames) as readonly PatternId[];

export const patterns = record(
  Object.fromEntries(ids.map((id) => [id, text])) as Record<PatternId, Reader<Text>>,
);

/** Each pattern names only what it is given, and the same in every language. */
export function checkPatterns({ file, value }: Opened<Patterns>): void {
  for (const id of ids) {
    const known: readonly string[] = patternNames[id];
    const strange = languages.flatMap((language) =>
      namesIn(value[id][language])
        .filter((name) => !known.includes(name))
        .map((name) => ({ path: [id, language], name })),
    );
    for (const { path, name } of strange) {
      const message = `Nothing called "${name}" is put into this pattern.`;
      const place = placeOfName(file, path, name);
      file.fault('UNKNOWN_NAME', place, message, nearestCure(name, known));
    }
    if (strange.length === 0) checkEqualNames(file, [id], value[id]);
  }
}
