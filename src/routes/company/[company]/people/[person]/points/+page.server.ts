import { error } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { currentContent } from '#server/current-content.ts';
import { points } from '#server/insight/points.ts';
import * as roll from '#server/people/roll.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, params }) => {
  const { db, act } = within(locals);
  const { company } = act.by;
  const person = await roll.one(db, company, params.person);
  if (!person) error(404);
  const { id, name, crew, crewName } = person;
  return {
    person: { id, name, crew: crew === null ? undefined : { id: crew, name: crewName ?? '' } },
    isOwn: id === act.by.person,
    points: await points(db, await currentContent(), company, id),
  };
};
