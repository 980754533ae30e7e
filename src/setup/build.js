import { createHash } from 'node:crypto';
import { existsSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { runtime } from './runtime.js';
import { Trouble, runQuietly, secondsSince, tell } from './run.js';

/** What the app is built from. */
export const sources = [
  'src',
  'content',
  'static',
  'package.json',
  'package-lock.json',
  'svelte.config.js',
  'tsconfig.json',
  'vite.config.ts',
];
// Written by the build itself, so they say nothing about whether one is due.
const products =
  /^src\/ui\/messages\/(generated|project\.inlang\/(README\.md|\.meta\.json|\.gitignore))/;
const stamp = 'build/.built-from';

/**
 * Every file at or below a path, in a fixed order.
 * @param {string} path
 * @returns {string[]}
 */
const filesUnder = (path) => {
  if (!existsSync(path) || products.test(path.split('\\').join('/'))) return [];
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path)
    .sort()
    .flatMap((name) => filesUnder(join(path, name)));
};

const fingerprint = () => {
  const hash = createHash('sha256');
  for (const file of sources.flatMap(filesUnder)) {
    const bytes = readFileSync(file);
    hash.update(`${file}\0${bytes.length}\0`).update(bytes);
  }
  return hash.digest('hex');
};

/** Builds the app, when a source differs from those of the last build. */
export function buildApp() {
  const wanted = fingerprint();
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return;

  tell('Building the app...');
  const start = Date.now();
  rmSync(stamp, { force: true });
  const { ok, output } = runQuietly(runtime(), ['node_modules/vite/bin/vite.js', 'build']);
  if (!ok) {
    throw new Trouble(`${output}\nThe app could not be built; the reason stands above.`);
  }
  writeFileSync(stamp, wanted);
  tell(`App built in ${secondsSince(start)}.`);
}
