import { compile } from '#engine/compile/compile.ts';
import type { Content } from '#engine/compile/content.ts';
import type { Diagnostic } from '#engine/compile/diagnostic.ts';
import { contentFolder, readContentFiles } from './content-files.ts';

export { contentFolder, readContentFiles };

/** Content that may not be taught from, with everything that is wrong with it. */
export class FaultyContentError extends Error {
  override readonly name = 'FaultyContentError';
  readonly diagnostics: readonly Diagnostic[];

  constructor(folder: string, diagnostics: readonly Diagnostic[]) {
    const places = diagnostics.map(
      ({ file, line, column, code, message }) => `  ${file}:${line}:${column} ${code} ${message}`,
    );
    super([`The content in ${folder} has faults:`, ...places].join('\n'));
    this.diagnostics = diagnostics;
  }
}

/** The content to teach from, all of it right. Throws a FaultyContentError otherwise. */
export function openContent(folder = contentFolder()): Content {
  const { content, diagnostics } = compile(readContentFiles(folder));
  if (diagnostics.length > 0) throw new FaultyContentError(folder, diagnostics);
  return content;
}

let opened: Content | undefined;

/** The project's content, read once for as long as the server runs. */
export const content = (): Content => (opened ??= openContent());
