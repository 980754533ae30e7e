import { error, fail } from '@sveltejs/kit';
import type { IsoDate } from '#engine/calendar.ts';
import { isChange } from '#engine/certificate/change.ts';
import { isUuid } from '#engine/uuid.ts';
import { within } from '#server/access/act.ts';
import { may } from '#server/access/rights.ts';
import { textOf } from '#server/access/text-of.ts';
import { historyOf, one } from '#server/certificates/holdings.ts';
import { change } from '#server/certificates/life.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, params }) => {
  const { db, act } = within(locals);
  const { company, person, roles } = act.by;
  const certificate = await one(db, company, params.certificate, act.at.slice(0, 10) as IsoDate);
  if (!certificate) error(404);
  return {
    certificate,
    history: await historyOf(db, certificate.id),
    mayChange: may(roles, 'change certificates') && certificate.person !== person,
    // Sent back with the form, so that sending it twice does it once.
    event: freshId(),
  };
};

export const actions = {
  change: async ({ locals, params, request }) => {
    const { db, act } = within(locals);
    const form = await request.formData();
    const [id, wanted, reason] = [
      textOf(form, 'event'),
      textOf(form, 'change'),
      textOf(form, 'reason'),
    ];
    if (!isUuid(id) || !isChange(wanted))
      return fail(400, { fault: 'NOT_NOW' as const, wanted, reason });
    const done = await change(db, act, params.certificate, { id, change: wanted, reason });
    return done.ok ? { done: true } : fail(400, { fault: done.error, wanted, reason });
  },
} satisfies Actions;
