import type { Store } from '#ui/attempts/browser-store.ts';
import { merged } from '#engine/exam/check-sheet.ts';
import { HandsOn } from './hands-on.svelte.ts';
import { answerFrom, keepBundle, keepCheck, keptBundle, keptCheck } from './kept-check.ts';

/**
 * A check as this device has it, brought up to date where the server answers. `company` is the one that it
 * was begun in, which a link says that comes from there. Undefined where neither has it.
 */
export async function takenAlong(
  store: Store,
  ask: typeof fetch,
  id: string,
  company: string | null,
): Promise<HandsOn | undefined> {
  const before = keptCheck(store, id);
  const of = company ?? before?.company;
  const headers = { accept: 'application/json' };
  const answer = of
    ? await ask(`/company/${of}/checks/${id}`, { headers }).catch(() => undefined)
    : undefined;
  const said = answer?.ok ? answerFrom(await answer.json().catch(() => undefined)) : undefined;
  if (said && of) {
    const { check, bundle, isOver } = said;
    const { candidateName, begunAt, signedAt } = check;
    keepBundle(store, id, bundle);
    keepCheck(store, {
      id,
      company: of,
      candidateName,
      begunAt,
      signedAt,
      isOver: isOver && signedAt === null,
      // What was filled in here meanwhile is not lost to what the server has; what is signed stands.
      sheet: before && signedAt === null ? merged(check.sheet, before.sheet) : check.sheet,
      savedSheet: JSON.stringify(check.sheet),
    });
  }
  const [kept, bundle] = [keptCheck(store, id), keptBundle(store, id)];
  return kept && bundle ? new HandsOn(store, kept, bundle) : undefined;
}
