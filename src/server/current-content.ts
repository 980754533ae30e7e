import { createHash } from 'node:crypto';
import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join, resolve, sep } from 'node:path';
import type { Content } from '#engine/compile/content.ts';
import type { ContentFile } from '#engine/compile/files.ts';
import { fromText, toText } from '#engine/compile/transport.ts';
import { contentFolder, readContentFiles } from './content-files.ts';

/** What the app was built from is written here, so that another compiler never reads this one's work. */
const stamp = '.built-from';
const kept = 'content.compiled';

function builtFrom(build: string): string | undefined {
  try {
    return readFileSync(join(build, stamp), 'utf8');
  } catch {
    return undefined;
  }
}

const keyOf = (built: string, files: readonly ContentFile[]): string => {
  const hash = createHash('sha256').update(built);
  for (const { path, text } of files) hash.update(JSON.stringify([path, text]));
  return hash.digest('hex');
};

function keptContent(file: string, key: string): Content | undefined {
  try {
    const [first = '', text = ''] = readFileSync(file, 'utf8').split('\n', 2);
    return first === key ? (fromText(text) as Content) : undefined;
  } catch {
    return undefined;
  }
}

/** Another process may do the same; whichever comes last stands there whole. */
function keep(file: string, key: string, content: Content): void {
  try {
    const temporary = `${file}.${process.pid}`;
    writeFileSync(temporary, `${key}\n${toText(content)}`);
    renameSync(temporary, file);
  } catch {
    // A build that nobody may write to is compiled at every start.
  }
}

/**
 * The content of a folder as a process of a build reads it: from what an earlier one compiled, where
 * neither the build nor any file has changed since. Loads the compiler only where it is needed.
 */
export async function openQuickly(build: string, folder: string): Promise<Content> {
  const built = builtFrom(build);
  const file = join(build, kept);
  const key = built && keyOf(built, readContentFiles(folder));
  const before = key && keptContent(file, key);
  if (before) return before;
  const { openContent } = await import('./content.ts');
  const compiled = openContent(folder);
  if (key) keep(file, key, compiled);
  return compiled;
}

/** The build this runs from; undefined for the sources, whose compiler may be another every time. */
function ownBuild(folder: string): string | undefined {
  const build = resolve(folder, '../build');
  return import.meta.dirname.startsWith(build + sep) ? build : undefined;
}

async function open(): Promise<Content> {
  const folder = contentFolder();
  const build = ownBuild(folder);
  if (build) return openQuickly(build, folder);
  return (await import('./content.ts')).openContent(folder);
}

let opened: Promise<Content> | undefined;

/** The content this process teaches from: read once, when it is first asked for. */
export const currentContent = (): Promise<Content> =>
  (opened ??= open().catch((error: unknown) => {
    opened = undefined;
    throw error;
  }));
