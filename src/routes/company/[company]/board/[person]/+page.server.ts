import { error, fail } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { may } from '#server/access/rights.ts';
import { textOf } from '#server/access/text-of.ts';
import * as board from '#server/board/board.ts';
import { evidence } from '#server/board/evidence.ts';
import { schemesNow } from '#server/board/qualifications.ts';
import * as declared from '#server/declared/declared.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, params }) => {
  const { db, act } = within(locals);
  const { company, roles } = act.by;
  const schemes = await schemesNow();
  const person = await board.one(db, company, act.at, schemes, params.person);
  if (!person) error(404);
  return {
    person,
    ...(await evidence(db, company, params.person)),
    declared: await declared.of(db, company, params.person),
    mayDeclare: may(roles, 'change certificates'),
    fresh: freshId(),
    today: act.at.slice(0, 10),
    columns: schemes.map(({ id, title, parts }) => ({
      id,
      title,
      parts: parts.map((part) => ({ id: part.id, title: part.title })),
    })),
  };
};

export const actions = {
  declare: async ({ locals, request, params: { person } }) => {
    const { db, act } = within(locals);
    const form = await request.formData();
    const of = (name: string) => textOf(form, name);
    const given = {
      title: of('title'),
      issuer: of('issuer'),
      number: of('number'),
      scheme: of('scheme'),
      issuedOn: of('issuedOn'),
      validUntil: of('validUntil'),
    };
    const schemes = (await schemesNow()).map(({ id }) => id as string);
    const kept = await declared.declare(db, act, { id: of('id'), person, schemes }, given);
    return kept.ok ? { done: 'kept' as const } : fail(400, { fault: kept.error, given });
  },

  remove: async ({ locals, request }) => {
    const { db, act } = within(locals);
    const form = await request.formData();
    const id = textOf(form, 'id');
    const removed = await declared.remove(db, act, id, textOf(form, 'reason'));
    return removed.ok ? { done: 'removed' as const } : fail(400, { fault: removed.error, id });
  },
} satisfies Actions;
