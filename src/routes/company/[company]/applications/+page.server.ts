import { fail, redirect } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { may } from '#server/access/rights.ts';
import { textOf } from '#server/access/text-of.ts';
import { currentContent } from '#server/current-content.ts';
import { list, openApplication } from '#server/exams/applications.ts';
import { page } from '#server/people/roll.ts';
import type { Actions, PageServerLoad } from './$types';

/** So many of those whom a search finds are offered. */
const most = 12;

export const load: PageServerLoad = async ({ locals, url }) => {
  const { db, act } = within(locals);
  const { company, roles } = act.by;
  const when = url.searchParams.get('when') === 'closed' ? 'closed' : 'open';
  const after = url.searchParams.get('after');
  const search = url.searchParams.get('search') ?? '';
  const mayOpen = may(roles, 'open applications');
  const found = mayOpen && search ? await page(db, company, { search, most }) : undefined;
  const { schemes } = await currentContent();
  return {
    ...(await list(db, company, { when, ...(after ? { after } : {}) })),
    when,
    search,
    mayOpen,
    found: found?.people.map(({ id, name, number }) => ({ id, name, number })),
    schemes: [...schemes.values()].map(({ id, title }) => ({ id, title })),
  };
};

export const actions: Actions = {
  create: async ({ locals, request }) => {
    const { db, act } = within(locals);
    const form = await request.formData();
    const asked = { person: textOf(form, 'person'), scheme: textOf(form, 'scheme') };
    const made = await openApplication(db, act, await currentContent(), asked);
    if (!made.ok) return fail(400, { fault: made.error });
    redirect(303, `/company/${act.by.company}/applications/${made.value}`);
  },
};
