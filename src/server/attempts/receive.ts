/** Takes in what a browser sends: each attempt marked, kept once, and answered for itself. */
import type { Content } from '#engine/compile/content.ts';
import type { AttemptFault } from '#engine/marking/attempt-file.ts';
import type { Db } from '../database/open-database.ts';
import type { Act } from '../people/member.ts';
import type { Ready } from './ready.ts';
import type { Inbox } from './inbox.ts';
import { markSent } from './marking.ts';
import { type Sent, sentFrom } from './sent.ts';
import { notCounted, type NotCounted, type Work, workFor } from './work.ts';

/** At its attempt's place. What was refused is refused for good: the same again meets the same answer. */
export type Receipt =
  | {
      readonly id: string;
      readonly kept: 'now' | 'before';
      readonly score: number;
      readonly outcome: string;
      /** Kept as practice: why it does not count for the work it named. */
      readonly notCounted?: NotCounted;
    }
  | { readonly id: string | undefined; readonly refused: readonly AttemptFault[] | 'NOT_YOURS' };

export type Reception = { readonly db: Db; readonly inbox: Inbox; readonly content: Content };

export async function receive(
  { db, inbox, content }: Reception,
  { by, at }: Act,
  list: readonly unknown[],
): Promise<readonly Receipt[]> {
  const read = list.map(sentFrom);
  const named = read.flatMap((one) => (one.ok && one.value.work ? [one.value.work] : []));
  const works = await workFor(db, by, [...new Set(named)]);
  const tries = new Map<string, number>();

  const countedFor = (sent: Sent): Work | NotCounted | undefined => {
    if (!sent.work) return undefined;
    const row = works.get(sent.work);
    const earlier = tries.get(sent.work) ?? 0;
    const reason = notCounted(row, sent, at, earlier);
    if (reason) return reason;
    tries.set(sent.work, earlier + 1);
    return row;
  };

  return Promise.all(
    read.map(async (one): Promise<Receipt> => {
      if (!one.ok) return { id: undefined, refused: one.error };
      const { id, kind } = one.value;
      const marked = markSent(content, one.value);
      if (!marked.ok) return { id, refused: marked.error };
      const counted = countedFor(one.value);
      const work = typeof counted === 'object' ? counted : undefined;
      const ready: Ready = { id, by, kind, work, marked: marked.value, at };
      const keeping = await inbox.keep(ready);
      if (keeping === 'not yours') return { id, refused: 'NOT_YOURS' };
      const { score, outcome } = marked.value;
      // Sent again, it counts as it did the first time.
      if (keeping === 'before') return { id, kept: 'before', score, outcome };
      const why = typeof counted === 'string' ? { notCounted: counted } : {};
      return { id, kept: 'now', score, outcome, ...why };
    }),
  );
}
