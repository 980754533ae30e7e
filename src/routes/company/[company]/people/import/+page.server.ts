import { importActions } from '#server/import/actions.ts';
import { mostRows } from '#server/import/read-table.ts';
import * as roster from '#server/people/roster/roster.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = () => ({ mostRows });

export const actions = importActions({
  preview: (db, { by }, text) => roster.preview(db, by.company, text),
  write: roster.write,
}) satisfies Actions;
