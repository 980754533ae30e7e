import { fail, redirect } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { textOf } from '#server/access/text-of.ts';
import { columnsOf, schemesNow } from '#server/board/qualifications.ts';
import { freshId } from '#server/fresh-id.ts';
import { givenJob } from '#server/jobs/given-job.ts';
import * as jobs from '#server/jobs/jobs.ts';
import { openCrews } from '#server/people/crews.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals }) => {
  const { db, act } = within(locals);
  return {
    id: freshId(),
    columns: columnsOf(await schemesNow()),
    crews: await openCrews(db, act.by.company),
  };
};

export const actions: Actions = {
  keep: async ({ locals, request }) => {
    const { db, act } = within(locals);
    const form = await request.formData();
    const given = givenJob(form);
    const schemes = (await schemesNow()).map(({ id }) => id);
    const kept = await jobs.keep(db, act, schemes, textOf(form, 'id'), given);
    if (!kept.ok) return fail(400, { fault: kept.error, given });
    redirect(303, `/company/${act.by.company}/jobs/${kept.value}`);
  },
};
