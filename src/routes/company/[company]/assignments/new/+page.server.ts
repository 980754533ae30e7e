import { fail, redirect } from '@sveltejs/kit';
import { catalogueOf } from '#engine/compile/catalogue.ts';
import { within } from '#server/access/act.ts';
import { textOf } from '#server/access/text-of.ts';
import { compose } from '#server/assignments/assignments.ts';
import {
  added,
  blank,
  draftFrom,
  type Entered,
  enteredFrom,
  without,
} from '#server/assignments/draft-form.ts';
import { currentContent } from '#server/current-content.ts';
import * as crewList from '#server/people/crew-list.ts';
import { one, page } from '#server/people/roll.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, url }) => {
  const { db, act } = within(locals);
  const { methods, takeoffs, topics } = catalogueOf(await currentContent());
  const person = url.searchParams.get('person');
  const known = person ? await one(db, act.by.company, person) : undefined;
  return {
    crews: await crewList.choices(db, act.by.company, url.searchParams.getAll('crew')),
    methods: methods.map(({ id, title, site }) => ({
      id,
      title,
      site: site.map(({ id: question, name, values }) => ({
        id: question,
        name,
        values: values.map((value) => ({ id: value.id, name: value.name })),
      })),
    })),
    takeoffs: takeoffs.map(({ id, title }) => ({ id, title })),
    topics: topics.map(({ id, title, questions }) => ({
      id,
      title,
      questions: Object.values(questions).reduce((sum, count) => sum + count, 0),
    })),
    entered: {
      ...blank,
      crews: url.searchParams.getAll('crew'),
      persons: known ? [{ id: known.id, name: known.name }] : [],
    },
  };
};

const mostFound = 10;

/** What was entered, with the crews that it can be for: those chosen are always among them. */
async function again(locals: App.Locals, entered: Entered) {
  const { db, act } = within(locals);
  return { entered, crews: await crewList.choices(db, act.by.company, entered.crews) };
}

export const actions: Actions = {
  add: async ({ locals, request }) => again(locals, added(await request.formData())),
  out: async ({ locals, request }) => again(locals, without(await request.formData())),

  find: async ({ locals, request }) => {
    const { db, act } = within(locals);
    const form = await request.formData();
    const search = textOf(form, 'search');
    const { people } = await page(db, act.by.company, { search });
    const found = people
      .slice(0, mostFound)
      .map(({ id, name, crewName }) => ({ id, name, crewName }));
    const entered = enteredFrom(form);
    const crews = await crewList.found(db, act.by.company, search, entered.crews, mostFound);
    return { entered, crews, search, found };
  },

  give: async ({ locals, request, params }) => {
    const { db, act } = within(locals);
    const form = await request.formData();
    const made = await compose(db, act, await currentContent(), draftFrom(form));
    if (!made.ok) {
      return fail(400, { ...(await again(locals, enteredFrom(form))), faults: made.error });
    }
    redirect(303, `/company/${params.company}/assignments/${made.value}`);
  },
};
