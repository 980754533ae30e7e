/** Other versions of the app beside this one, as a server has them after an update. */
import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { sources } from '../../src/setup/build.js';

const root = join(import.meta.dirname, '../..');

// Made by building; what is made for the one does not hold for the other.
const made = /[\\/]messages[\\/]generated/;

/** A copy of parts of the project, in a folder of its own among the results of tests. */
function copyOf(name: string, parts: readonly string[]): string {
  const folder = join(root, 'test-results', name);
  for (const part of parts) {
    rmSync(join(folder, part), { recursive: true, force: true });
    cpSync(join(root, part), join(folder, part), {
      recursive: true,
      filter: (path) => !made.test(path),
    });
  }
  const packages = join(folder, 'node_modules');
  if (!existsSync(packages)) symlinkSync(join(root, 'node_modules'), packages, 'junction');
  return folder;
}

function replaceIn(file: string, before: string, after: string): void {
  const text = readFileSync(file, 'utf8');
  if (!text.includes(before)) throw new Error(`${file} holds no ${before}.`);
  writeFileSync(file, text.replace(before, after));
}

/** This app with another word for the way in, built anew. */
export function anotherBuild(): { readonly folder: string; readonly start: string } {
  const folder = copyOf('another-build', sources);
  const start = 'Begin to practise';
  replaceIn(join(folder, 'src/ui/messages/en/practice.json'), 'Start practising', start);
  // The build alone: preparing could install through the link into the packages of all.
  execFileSync(process.execPath, ['node_modules/vite/bin/vite.js', 'build'], {
    cwd: folder,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  return { folder, start };
}

/** The same build with another title in its content. */
export function anotherContent(): { readonly folder: string; readonly title: string } {
  const needed = ['build', 'content', 'package.json', 'src/server', 'src/engine'];
  const folder = copyOf('another-content', needed);
  const title = 'Base of wall, revised';
  replaceIn(
    join(folder, 'content/methods/base-of-wall.yaml'),
    'en: Base of wall,',
    `en: '${title}',`,
  );
  return { folder, title };
}
