/** The address of a run of questions that was given as work, and the run that was begun there. */
import { isUuid } from '#engine/uuid.ts';
import { isKeptRun, type KeptRun, mostInRun } from '#engine/written/kept-run.ts';
import type { Store } from '#ui/attempts/browser-store.ts';
import { isSeed } from '#ui/mockup/wall-address.ts';

export type RunAddress = Pick<KeptRun, 'topic' | 'seed' | 'count'> & { readonly work: string };

const drawer = 'written-run/';

export const runAddress = ({ topic, seed, count, work }: RunAddress): string => {
  const asked = new URLSearchParams({ seed, questions: String(count), work });
  return `/written/${encodeURIComponent(topic)}?${asked.toString()}`;
};

/** Undefined where the address asks for no run: the topic is practised then. */
export function runFrom(topic: string, asked: URLSearchParams): RunAddress | undefined {
  const [work, seed, count] = [
    asked.get('work'),
    asked.get('seed') ?? '1',
    Number(asked.get('questions')),
  ];
  const isCount = Number.isSafeInteger(count) && count >= 1 && count <= mostInRun;
  return isUuid(work) && isSeed(seed) && isCount ? { topic, seed, count, work } : undefined;
}

const allRuns = (store: Store): readonly KeptRun[] =>
  store
    .names(drawer)
    .map((name) => store.read(name))
    .filter(isKeptRun);

export const keepRun = (store: Store, run: KeptRun): boolean => store.write(drawer + run.id, run);

export const isFinished = ({ questions, answers }: KeptRun): boolean =>
  answers.length === questions.length;

/** What was begun for the work and not brought to its end. */
export const unfinishedRun = (store: Store, work: string): KeptRun | undefined =>
  allRuns(store).find((run) => run.work === work && !isFinished(run));
