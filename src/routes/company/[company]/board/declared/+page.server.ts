import { within } from '#server/access/act.ts';
import { may } from '#server/access/rights.ts';
import { columnsOf, schemesNow } from '#server/board/qualifications.ts';
import { count } from '#server/declared/declared.ts';
import * as file from '#server/declared/file/declared-file.ts';
import { importActions } from '#server/import/actions.ts';
import { mostRows } from '#server/import/read-table.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals }) => {
  const { db, act } = within(locals);
  return {
    mostRows,
    written: await count(db, act.by.company),
    columns: columnsOf(await schemesNow()),
    mayExport: may(act.by.roles, 'export records'),
  };
};

export const actions = importActions({
  preview: async (db, act, text) => file.preview(db, act, await schemesNow(), text),
  write: async (db, act, text, how) => file.write(db, act, await schemesNow(), text, how),
}) satisfies Actions;
