import { addPeriod } from '#engine/calendar.ts';
import { within } from '#server/access/act.ts';
import { coverageOf, endings } from '#server/board/coverage-of.ts';
import { columnsOf, schemesNow } from '#server/board/qualifications.ts';
import { dayFrom } from '#server/board/records-of.ts';
import type { PageServerLoad } from './$types';

const shown = 200;

export const load: PageServerLoad = async ({ locals }) => {
  const { db, act } = within(locals);
  const { company } = act.by;
  const schemes = await schemesNow();
  const covered = await coverageOf(db, company, act.at, schemes);
  const through = addPeriod(dayFrom(act.at), { count: 12, unit: 'months' });
  const ending = await endings(db, company, act.at, through, shown + 1);
  return {
    today: act.at.slice(0, 10),
    covered: columnsOf(schemes).map((column) => ({ ...column, ...covered.get(column.id)! })),
    ending: ending.slice(0, shown),
    isMore: ending.length > shown,
  };
};
