import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import type { ContentFile } from '#engine/compile/files.ts';

/** The project's own content, from the sources as well as from the build. */
export function contentFolder(): string {
  for (let at = import.meta.dirname; at !== dirname(at); at = dirname(at)) {
    const folder = join(at, 'content');
    if (existsSync(join(folder, 'sources.yaml'))) return folder;
  }
  return join(process.cwd(), 'content');
}

/** Every file under the folder, which throws where it cannot be read. */
export const readContentFiles = (folder: string): readonly ContentFile[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => ({
      path: relative(folder, path).split(sep).join('/'),
      text: readFileSync(path, 'utf8'),
    }));
