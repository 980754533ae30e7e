import { folded } from './folded.ts';

/** A user name to begin with, as ana.lopez for Ana María López. */
export function suggestedName(name: string): string {
  const words = folded(name)
    .split(' ')
    .map((word) => word.replace(/[^a-z0-9]/g, ''))
    .filter(Boolean);
  const ends = words.length > 1 ? [words[0], words.at(-1)] : words;
  return ends.join('.').slice(0, 40);
}
