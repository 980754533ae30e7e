import { fail, redirect } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { textOf } from '#server/access/text-of.ts';
import { columnsOf, schemesNow } from '#server/board/qualifications.ts';
import { freshId } from '#server/fresh-id.ts';
import { givenJob } from '#server/jobs/given-job.ts';
import * as jobs from '#server/jobs/jobs.ts';
import { forForm } from '#server/people/crew-list.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals }) => {
  const { db, act } = within(locals);
  return {
    id: freshId(),
    columns: columnsOf(await schemesNow()),
    crews: await forForm(db, act.by.company, new URLSearchParams()),
  };
};

/** What was entered, with the crews whose way can be told: those told before are always among them. */
async function again(locals: App.Locals, form: FormData) {
  const { db, act } = within(locals);
  const given = givenJob(form);
  const told = given.travel.map(({ crew }) => crew);
  return { id: textOf(form, 'id'), given, crews: await forForm(db, act.by.company, form, told) };
}

export const actions: Actions = {
  find: async ({ locals, request }) => again(locals, await request.formData()),

  keep: async ({ locals, request }) => {
    const { db, act } = within(locals);
    const form = await request.formData();
    const schemes = (await schemesNow()).map(({ id }) => id);
    const kept = await jobs.keep(db, act, schemes, textOf(form, 'id'), givenJob(form));
    if (!kept.ok) return fail(400, { fault: kept.error, ...(await again(locals, form)) });
    redirect(303, `/company/${act.by.company}/jobs/${kept.value}`);
  },
};
