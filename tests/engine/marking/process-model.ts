import type { Model, ModelMove } from '#engine/marking/model.ts';

/** What is still to be done; a model of choice and repetition whose states are such rests. */
export type Process =
  | { readonly kind: 'done' }
  | { readonly kind: 'card'; readonly label: string | null }
  | { readonly kind: 'sequence' | 'parallel'; readonly first: Process; readonly second: Process }
  | { readonly kind: 'choice'; readonly first: Process; readonly second: Process }
  | { readonly kind: 'body' | 'again'; readonly body: Process; readonly redo: Process };

const done: Process = { kind: 'done' };
const silent: Process = { kind: 'card', label: null };

const joined =
  (kind: 'sequence' | 'parallel' | 'choice') =>
  (...parts: readonly Process[]): Process =>
    parts.reduceRight((second, first) => ({ kind, first, second }));

export const card = (label: string): Process => ({ kind: 'card', label });
export const sequence = joined('sequence');
export const parallel = joined('parallel');
export const choice = joined('choice');

/** The body, and as often as one likes the redo and the body again; silent before each and at the end. */
export const loop = (body: Process, redo: Process): Process => ({ kind: 'body', body, redo });

export const processModel = (process: Process): Model<Process> => ({
  initial: process,
  moves: movesOf,
  isFinal,
  key: (rest) => JSON.stringify(rest),
});

function isFinal(process: Process): boolean {
  switch (process.kind) {
    case 'done':
      return true;
    case 'choice':
      return isFinal(process.first) || isFinal(process.second);
    case 'sequence':
    case 'parallel':
      return isFinal(process.first) && isFinal(process.second);
    default:
      return false;
  }
}

type Moves = readonly ModelMove<Process>[];

const then = (moves: Moves, rest: (next: Process) => Process): Moves =>
  moves.map(({ label, next }) => ({ label, next: rest(next) }));

function movesOf(process: Process): Moves {
  switch (process.kind) {
    case 'done':
      return [];
    case 'card':
      return [{ label: process.label, next: done }];
    case 'choice':
      return [...movesOf(process.first), ...movesOf(process.second)];
    case 'sequence': {
      const { first, second } = process;
      const moves = then(movesOf(first), (next) => sequence(next, second));
      return isFinal(first) ? [...moves, ...movesOf(second)] : moves;
    }
    case 'parallel': {
      const { first, second } = process;
      return [
        ...then(movesOf(first), (next) => parallel(next, second)),
        ...then(movesOf(second), (next) => parallel(first, next)),
      ];
    }
    case 'body':
      return movesOf(sequence(silent, process.body, { ...process, kind: 'again' }));
    case 'again':
      return movesOf(choice(silent, sequence(process.redo, { ...process, kind: 'body' })));
  }
}
