import { fail, redirect } from '@sveltejs/kit';
import { catalogueOf } from '#engine/compile/catalogue.ts';
import { within } from '#server/access/act.ts';
import { textOf } from '#server/access/text-of.ts';
import { compose } from '#server/assignments/assignments.ts';
import { added, blank, draftFrom, enteredFrom, without } from '#server/assignments/draft-form.ts';
import { currentContent } from '#server/current-content.ts';
import { openCrews } from '#server/people/crews.ts';
import { one, page } from '#server/people/roll.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, url }) => {
  const { db, act } = within(locals);
  const { methods, takeoffs, topics } = catalogueOf(await currentContent());
  const person = url.searchParams.get('person');
  const known = person ? await one(db, act.by.company, person) : undefined;
  return {
    crews: await openCrews(db, act.by.company),
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

export const actions: Actions = {
  add: async ({ request }) => ({ entered: added(await request.formData()) }),
  out: async ({ request }) => ({ entered: without(await request.formData()) }),

  find: async ({ locals, request }) => {
    const { db, act } = within(locals);
    const form = await request.formData();
    const { people } = await page(db, act.by.company, { search: textOf(form, 'search') });
    const found = people.slice(0, 10).map(({ id, name, crewName }) => ({ id, name, crewName }));
    return { entered: enteredFrom(form), search: textOf(form, 'search'), found };
  },

  give: async ({ locals, request, params }) => {
    const { db, act } = within(locals);
    const form = await request.formData();
    const made = await compose(db, act, await currentContent(), draftFrom(form));
    if (!made.ok) return fail(400, { entered: enteredFrom(form), faults: made.error });
    redirect(303, `/company/${params.company}/assignments/${made.value}`);
  },
};
