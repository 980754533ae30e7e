import { error, fail } from '@sveltejs/kit';
import { catalogueOf } from '#engine/compile/catalogue.ts';
import { within } from '#server/access/act.ts';
import { may } from '#server/access/rights.ts';
import { one } from '#server/assignments/assignment-list.ts';
import { changeDates, withdraw } from '#server/assignments/assignments.ts';
import { datesOf, enteredFrom } from '#server/assignments/draft-form.ts';
import { counts, filters, page } from '#server/assignments/those-given.ts';
import { forWorks } from '#server/attempts/kept-attempts.ts';
import { currentContent } from '#server/current-content.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, params, url }) => {
  const { db, act } = within(locals);
  const { company } = act.by;
  const assignment = await one(db, company, params.assignment);
  if (!assignment) error(404);
  const asked = url.searchParams;
  const only = filters.find((filter) => filter === asked.get('only'));
  const after = asked.get('after') ?? undefined;
  const person = asked.get('person');
  const how = { at: act.at, ...(only ? { only } : {}), ...(after ? { after } : {}) };
  const works = assignment.works.map(({ id }) => id);
  const { methods, takeoffs, topics } = catalogueOf(await currentContent());
  return {
    assignment,
    counts: await counts(db, company, assignment, act.at),
    standings: await page(db, company, assignment, how),
    only,
    person,
    attempts: person ? await forWorks(db, company, { person, works }) : [],
    mayAssign: may(act.by.roles, 'assign'),
    known: {
      methods: methods.map(({ id, title, site }) => ({
        id,
        title,
        site: site.map((question) => ({
          ...question,
          values: question.values.map((value) => ({ ...value, conditions: new Map() })),
        })),
      })),
      takeoffs: takeoffs.map(({ id, title }) => ({ id, title })),
      topics: topics.map(({ id, title }) => ({ id, title })),
    },
  };
};

export const actions: Actions = {
  dates: async ({ locals, params, request }) => {
    const { db, act } = within(locals);
    const form = await request.formData();
    const changed = await changeDates(db, act, params.assignment, datesOf(form));
    if (changed.ok) return { changed: true };
    if (changed.error === 'ABSENT') error(404);
    const { opensDay, dueDay, tries } = enteredFrom(form);
    return fail(400, { entered: { opensDay, dueDay, tries }, faults: changed.error });
  },

  withdraw: async ({ locals, params }) => {
    const { db, act } = within(locals);
    const done = await withdraw(db, act, params.assignment);
    if (!done.ok) error(404);
    return { withdrawn: true };
  },
};
