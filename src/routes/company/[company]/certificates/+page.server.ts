import type { IsoDate } from '#engine/calendar.ts';
import { within } from '#server/access/act.ts';
import { listed } from '#server/certificates/holdings.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, url }) => {
  const { db, act } = within(locals);
  const show = url.searchParams.get('show') === 'all' ? ('all' as const) : ('attention' as const);
  const search = url.searchParams.get('name') ?? '';
  const today = act.at.slice(0, 10) as IsoDate;
  return { show, search, ...(await listed(db, act.by.company, { show, search, today })) };
};
