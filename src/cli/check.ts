import { existsSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';
import { parseArgs } from 'node:util';
import { compile } from '#engine/compile/compile.ts';
import type { ContentFile } from '#engine/compile/files.ts';
import { contentFolder, readContentFiles } from '#server/content.ts';
import { MisuseError, type Command } from './command.ts';
import { report, tally } from './report.ts';

/** Compiles the whole content folder and shows the faults, of the given files only where some are. */
export const check: Command = {
  usage: '[--content FOLDER] [file...]',
  summary: 'all faults of the content, or of these files of it',
  run: (args, { out, beside }) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { content: { type: 'string' } },
      allowPositionals: true,
    });
    const folder = folderFrom(values.content);
    const files = readContentFiles(folder);
    const shown = new Set(positionals.map((given) => pathOf(given, folder, files)));
    // Faults name their file as it is reached from here.
    const faults = compile(files)
      .diagnostics.filter(({ file }) => shown.size === 0 || shown.has(file))
      .map((fault) => ({ ...fault, file: relative('', join(folder, fault.file)) }));
    out(`${JSON.stringify(faults, undefined, 2)}\n`);
    faults.forEach((fault) => beside(report(fault)));
    beside(tally(faults));
    return faults.length > 0 ? 1 : 0;
  },
};

function folderFrom(given: string | undefined): string {
  const folder = resolve(given ?? contentFolder());
  if (existsSync(folder)) return folder;
  throw new MisuseError(`There is no folder ${given ?? folder}.`);
}

function pathOf(given: string, folder: string, files: readonly ContentFile[]): string {
  const path = relative(folder, resolve(given)).split(sep).join('/');
  if (files.some((file) => file.path === path)) return path;
  throw new MisuseError(`${given} is no file of the content in ${relative('', folder) || '.'}.`);
}
