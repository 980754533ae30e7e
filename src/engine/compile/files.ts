import type { DiagnosticCode } from './diagnostic.ts';
import { nearest } from './nearest.ts';

/** A file of content: its path from the folder that holds all of it, with "/" between names. */
export type ContentFile = { readonly path: string; readonly text: string };

export const singleFiles = ['sources', 'hazards'] as const;
export const folders = [
  'data-sheets',
  'methods',
  'takeoffs',
  'written',
  'schemes',
  'glossary',
] as const;

/** Among the topics, and none itself: the sentences that questions are made with. */
const patternsFile = 'written/patterns.yaml';

type Kind = (typeof singleFiles)[number] | (typeof folders)[number] | 'patterns';

export type Filed =
  | { readonly kind: Kind; readonly id: string }
  | { readonly kind: 'ignored' }
  | {
      readonly kind: 'stray';
      readonly code: Extract<DiagnosticCode, 'UNKNOWN_FILE' | 'MISPLACED_FILE'>;
      readonly message: string;
      readonly cure: string;
    };

/** What a file holds, which its path alone decides. */
export function fileAway(path: string): Filed {
  const parts = path.split('/');
  const name = parts.at(-1) ?? '';
  if (name === 'README.md' || parts.some((part) => part.startsWith('.'))) {
    return { kind: 'ignored' };
  }
  if (!name.endsWith('.yaml')) {
    const renamed = /\.yml$/i.test(name) ? `Name it ${name.slice(0, -4)}.yaml.` : undefined;
    const message = 'Content is made of .yaml files.';
    const cure = renamed ?? 'Move it out of the folder.';
    return { kind: 'stray', code: 'UNKNOWN_FILE', message, cure };
  }
  const id = name.slice(0, -'.yaml'.length);
  const single = singleFiles.find((known) => known === id);
  if (parts.length === 1 && single) return { kind: single, id };
  if (path === patternsFile) return { kind: 'patterns', id };
  const folder = folders.find((known) => known === parts[0]);
  if (parts.length === 2 && folder) return { kind: folder, id };
  return {
    kind: 'stray',
    code: 'MISPLACED_FILE',
    message: 'No file is read here.',
    cure: moveCure(path),
  };
}

function moveCure(path: string): string {
  const [first = '', ...others] = path.split('/');
  if (others.length === 0) {
    const meant = nearest(
      first,
      singleFiles.map((single) => `${single}.yaml`),
    );
    return meant ? `Name it ${meant}.` : `Move it to one of: ${folders.join('/, ')}/.`;
  }
  const folder = folders.find((known) => known === first) ?? nearest(first, folders);
  return folder
    ? `Move it to ${folder}/${others.at(-1)}.`
    : `Move it to one of: ${folders.join('/, ')}/.`;
}
