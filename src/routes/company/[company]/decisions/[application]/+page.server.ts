import { error, fail } from '@sveltejs/kit';
import { verdicts } from '#engine/exam/decision.ts';
import { within } from '#server/access/act.ts';
import { textOf } from '#server/access/text-of.ts';
import { enterTrainer } from '#server/checks/involvement.ts';
import { currentContent } from '#server/current-content.ts';
import { decide, decideOnAppeal } from '#server/decisions/decide.ts';
import { evidenceSheet } from '#server/decisions/evidence-sheet.ts';
import { application as applicationOf } from '#server/exams/applications.ts';
import { freshId } from '#server/fresh-id.ts';
import { mayTrain } from '#server/people/may-train.ts';
import type { Actions, PageServerLoad, RequestEvent } from './$types';

export const load: PageServerLoad = async ({ locals, params }) => {
  const { db, act } = within(locals);
  const application = await applicationOf(db, act.by.company, params.application);
  const sheet = application && (await evidenceSheet(db, act, await currentContent(), application));
  if (!sheet) error(404);
  return { sheet, fresh: freshId(), today: act.at.slice(0, 10), trainers: await mayTrain(db, act) };
};

async function deciding({ locals, params, request }: RequestEvent, by: typeof decide) {
  const { db, act } = within(locals);
  const form = await request.formData();
  const verdict = verdicts.find((one) => one === textOf(form, 'verdict'));
  const because = textOf(form, 'because');
  if (!verdict) return fail(400, { because, faults: [{ code: 'NO_VERDICT' as const }] });
  const asks = form.getAll('asks').filter((one) => typeof one === 'string');
  const asked = { id: textOf(form, 'id'), application: params.application, verdict, because, asks };
  const decided = await by(db, act, await currentContent(), asked);
  if (decided.ok) return { done: verdict };
  return fail(400, { because, verdict, asks, faults: decided.error });
}

export const actions: Actions = {
  decide: (event) => deciding(event, decide),
  appeal: (event) => deciding(event, decideOnAppeal),
  trained: async ({ locals, params, request }) => {
    const { db, act } = within(locals);
    const application = await applicationOf(db, act.by.company, params.application);
    if (!application) error(404);
    const form = await request.formData();
    const given = { person: textOf(form, 'person'), on: textOf(form, 'on') };
    const entered = await enterTrainer(db, act, { candidate: application.person, ...given });
    return entered.ok ? { entered: true } : fail(400, { trainerFault: entered.error });
  },
};
