import { within } from '#server/access/act.ts';
import { may } from '#server/access/rights.ts';
import { askedFrom } from '#server/board/asked-from.ts';
import * as board from '#server/board/board.ts';
import { columnsOf, schemesNow } from '#server/board/qualifications.ts';
import { openCrews } from '#server/people/crews.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, url }) => {
  const { db, act } = within(locals);
  const { company, roles } = act.by;
  const { fields, asked } = askedFrom(url.searchParams);
  const schemes = await schemesNow();
  return {
    ...(await board.page(db, company, act.at, schemes, asked)),
    asked: fields,
    isContinued: asked.after !== undefined,
    columns: columnsOf(schemes),
    crews: await openCrews(db, company),
    today: act.at.slice(0, 10),
    lengths: [...board.pageLengths],
    mayExport: may(roles, 'export records'),
  };
};
