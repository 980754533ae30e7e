import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { ContentFile } from '#engine/compile/files.ts';
import { readContentFiles } from '#server/content.ts';

/** A small content without a fault, on top of which each broken file is laid. */
export const soundFolder = join(import.meta.dirname, 'sound');
const brokenFolder = join(import.meta.dirname, 'broken');

/** What a broken file's first line says of it: the code of its one fault, and where it stands. */
export type Announced = {
  readonly code: string;
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly length: number;
};

export type BrokenCase = {
  /** Code and case, as the folders are named. */
  readonly name: string;
  readonly code: string;
  readonly files: readonly ContentFile[];
  readonly announced: readonly Announced[];
};

const announcement = /^# ([A-Z_]+) at (\d+):(\d+), (\d+) long\n/;

/** The sound content with the files of the case laid over it; one that ends in .gone takes its twin away. */
function caseIn(code: string, name: string): BrokenCase {
  const overlay = readContentFiles(join(brokenFolder, code, name));
  const replaced = new Set(overlay.map(({ path }) => path.replace(/\.gone$/, '')));
  const kept = readContentFiles(soundFolder).filter(({ path }) => !replaced.has(path));
  const added = overlay.filter(({ path }) => !path.endsWith('.gone'));
  const announced = overlay.flatMap(({ path, text }) => {
    const found = announcement.exec(text);
    if (!found) return [];
    const [line = 0, column = 0, length = 0] = found.slice(2).map(Number);
    return [{ code: found[1] ?? '', file: path.replace(/\.gone$/, ''), line, column, length }];
  });
  return { name: `${code}/${name}`, code, files: [...kept, ...added], announced };
}

const foldersIn = (folder: string): readonly string[] =>
  readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name);

export const brokenCases = (): readonly BrokenCase[] =>
  foldersIn(brokenFolder).flatMap((code) =>
    foldersIn(join(brokenFolder, code)).map((name) => caseIn(code, name)),
  );
