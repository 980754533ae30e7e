import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const root = join(import.meta.dirname, '../..');
const developers = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
const map = /## Map\n\n```\n(.*?)```/s.exec(developers)?.[1] ?? '';

const foldersOf = (place: string): readonly string[] =>
  readdirSync(join(root, place), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name)
    .sort();

/** The folders that the map names directly under a place, each at the start of its line. */
function namedUnder(place: string): readonly string[] {
  const lines = map.split('\n');
  const from = lines.findIndex((line) => line.startsWith(`${place}/`));
  const rest = lines.slice(from + 1);
  const end = rest.findIndex((line) => !line.startsWith(' '));
  return rest
    .slice(0, end)
    .filter((line) => /^ {2}\S/.test(line))
    .flatMap((line) => line.trim().split(/ {2,}/)[0]!.split(' '))
    .filter((word) => word.endsWith('/'))
    .map((word) => word.slice(0, -1))
    .sort();
}

test.each(['src/engine', 'src/server'])('the map names every room of %s, and no other', (place) => {
  expect(namedUnder(place)).toEqual(foldersOf(place));
});
