import { within } from '#server/access/act.ts';
import { currentContent } from '#server/current-content.ts';
import { waiting, type Waiting } from '#server/decisions/waiting.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals }) => {
  const { db, act } = within(locals);
  const content = await currentContent();
  const { ready, appeals } = await waiting(db, act.by.company, content, act.at);
  const row = ({ application: { id, personName, scheme, renews }, since }: Waiting) => ({
    id,
    personName,
    since,
    isRenewal: renews !== undefined,
    title: content.schemes.get(scheme)?.title,
  });
  return { ready: ready.map(row), appeals: appeals.map(row) };
};
