import { within } from '#server/access/act.ts';
import { may } from '#server/access/rights.ts';
import { list } from '#server/assignments/assignment-list.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, url }) => {
  const { db, act } = within(locals);
  const when = url.searchParams.get('when') === 'past' ? 'past' : 'current';
  const after = url.searchParams.get('after');
  const asked = { when, at: act.at, ...(after ? { after } : {}) } as const;
  return {
    ...(await list(db, act.by.company, asked)),
    when,
    at: act.at,
    mayAssign: may(act.by.roles, 'assign'),
  };
};
