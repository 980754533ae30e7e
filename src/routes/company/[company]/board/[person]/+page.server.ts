import { error } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import * as board from '#server/board/board.ts';
import { evidence } from '#server/board/evidence.ts';
import { schemesNow } from '#server/board/qualifications.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, params }) => {
  const { db, act } = within(locals);
  const { company } = act.by;
  const schemes = await schemesNow();
  const person = await board.one(db, company, act.at, schemes, params.person);
  if (!person) error(404);
  return {
    person,
    ...(await evidence(db, company, params.person)),
    columns: schemes.map(({ id, title, parts }) => ({
      id,
      title,
      parts: parts.map((part) => ({ id: part.id, title: part.title })),
    })),
  };
};
