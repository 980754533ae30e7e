import type { MethodEntry } from '#engine/compile/catalogue.ts';
import { siteFrom } from '#engine/method/site.ts';
import type { Store } from '#ui/attempts/browser-store.ts';
import { anyWall, freshSeed } from '#ui/mockup/fresh-wall.ts';
import { allUnfinished } from '#ui/mockup/unfinished.ts';
import { addressOf as wallAddress } from '#ui/mockup/wall-address.ts';
import { addressOf as problemAddress } from '#ui/takeoff/problem-address.ts';
import { runAddress, unfinishedRun } from '#ui/written/run-address.ts';
import type { DueWork } from './due-list.ts';

/**
 * Where a piece of work is done: the wall or the run that was begun for it, or a fresh one. Undefined where this
 * device's content does not have it.
 */
export function workAddress(
  store: Store,
  { id, subject }: Pick<DueWork, 'id' | 'subject'>,
  methods: readonly Pick<MethodEntry, 'id' | 'site'>[],
): { readonly address: string; readonly isBegun: boolean } | undefined {
  if (subject.kind === 'takeoff') {
    const { family } = subject;
    const address = problemAddress({
      family,
      seed: freshSeed(),
      form: 'entry',
      among: 'this',
      work: id,
    });
    return { address, isBegun: false };
  }
  if (subject.kind === 'written') {
    const { topic, questions: count } = subject;
    const begun = unfinishedRun(store, id);
    const address = runAddress({ topic, count, seed: begun?.seed ?? freshSeed(), work: id });
    return { address, isBegun: begun !== undefined };
  }
  const begun = allUnfinished(store).find(({ address }) =>
    address.endsWith(`&work=${encodeURIComponent(id)}`),
  );
  if (begun) return { address: begun.address, isBegun: true };
  const method = methods.find((one) => one.id === subject.method);
  if (!method) return undefined;
  const wall = anyWall(method, 'own', freshSeed());
  const fixed = subject.site && siteFrom(method.site, subject.site);
  if (fixed && !fixed.ok) return undefined;
  const site = fixed ? fixed.value : wall.site;
  return { address: wallAddress({ ...wall, site, work: id }), isBegun: false };
}
