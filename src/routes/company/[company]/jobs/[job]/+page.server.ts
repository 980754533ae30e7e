import { error, fail } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { columnsOf, schemesNow } from '#server/board/qualifications.ts';
import * as jobs from '#server/jobs/jobs.ts';
import { planJob, send } from '#server/jobs/plan-job.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, params }) => {
  const { db, act } = within(locals);
  const { company } = act.by;
  const job = await jobs.one(db, company, params.job);
  if (!job) error(404);
  const schemes = await schemesNow();
  const open = job.closedAt === null;
  return {
    job,
    plan: open ? await planJob(db, company, act.at, schemes, job) : undefined,
    columns: columnsOf(schemes),
  };
};

export const actions: Actions = {
  send: async ({ locals, params, request }) => {
    const { db, act } = within(locals);
    const people = (await request.formData()).getAll('person').map(String);
    const sent = await send(db, act, await schemesNow(), params.job, people);
    return sent.ok ? { done: 'sent' } : fail(400, { fault: sent.error });
  },
  close: async ({ locals, params }) => {
    const { db, act } = within(locals);
    const closed = await jobs.close(db, act, params.job);
    return closed.ok ? { done: 'closed' } : fail(400, { fault: closed.error });
  },
};
