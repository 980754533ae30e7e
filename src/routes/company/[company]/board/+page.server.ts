import { within } from '#server/access/act.ts';
import { may } from '#server/access/rights.ts';
import { askedFrom } from '#server/board/asked-from.ts';
import * as board from '#server/board/board.ts';
import { columnsOf, schemesNow } from '#server/board/qualifications.ts';
import { nearestOf } from '#server/declared/declared.ts';
import { forForm } from '#server/people/crew-list.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, url }) => {
  const { db, act } = within(locals);
  const { company, roles } = act.by;
  const { fields, asked } = askedFrom(url.searchParams);
  const schemes = await schemesNow();
  const page = await board.page(db, company, act.at, schemes, asked);
  const people = page.rows.map(({ id }) => id);
  const today = act.at.slice(0, 10);
  return {
    ...page,
    declared: await nearestOf(db, company, people, today),
    asked: fields,
    isContinued: asked.after !== undefined,
    columns: columnsOf(schemes),
    crews: await forForm(db, company, url.searchParams, [fields.crew]),
    today,
    lengths: [...board.pageLengths],
    mayDeclare: may(roles, 'change certificates'),
    mayExport: may(roles, 'export records'),
  };
};
