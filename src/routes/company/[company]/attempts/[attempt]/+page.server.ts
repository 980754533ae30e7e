import { error, fail } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { may } from '#server/access/rights.ts';
import { textOf } from '#server/access/text-of.ts';
import { decide, type DecisionKind, saidOf } from '#server/attempts/decisions.ts';
import { seen } from '#server/attempts/kept-attempts.ts';
import type { Actions, PageServerLoad, RequestEvent } from './$types';

/** One's own, or another's for those who may see it; to anybody else there is no such attempt. */
export const load: PageServerLoad = async ({ locals, params }) => {
  const { db, act } = within(locals);
  const { company, person, roles } = act.by;
  const attempt = await seen(db, company, params.attempt);
  if (!attempt || (attempt.person !== person && !may(roles, 'see attempts'))) error(404);
  return {
    attempt,
    said: await saidOf(db, company, params.attempt),
    mayDecide: may(roles, 'decide on attempts'),
  };
};

const deciding =
  (kind: DecisionKind) =>
  async ({ locals, params, request }: RequestEvent) => {
    const { db, act } = within(locals);
    const reason = textOf(await request.formData(), 'reason');
    const decided = await decide(db, act, { attempt: params.attempt, kind, reason });
    if (decided.ok) return { kind, done: true };
    if (decided.error === 'ABSENT') error(404);
    return fail(400, { kind, reason, fault: decided.error });
  };

export const actions: Actions = { comment: deciding('comment'), again: deciding('again') };
