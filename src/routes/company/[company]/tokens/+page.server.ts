import { fail } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { textOf } from '#server/access/text-of.ts';
import { scopes } from '#engine/record/token.ts';
import * as tokens from '#server/api/tokens.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals }) => {
  const { db, act } = within(locals);
  return {
    id: freshId(),
    tokens: await tokens.list(db, act.by.company, act.at),
    scopes,
    spans: tokens.spans,
  };
};

export const actions = {
  make: async ({ locals, request }) => {
    const { db, act } = within(locals);
    const form = await request.formData();
    const given = {
      label: textOf(form, 'label'),
      scopes: form.getAll('scopes').map(String),
      days: textOf(form, 'days'),
    };
    const made = await tokens.make(db, act, { ...given, id: textOf(form, 'id') });
    if (!made.ok) return fail(400, { fault: made.error, given });
    return { token: made.value };
  },

  revoke: async ({ locals, request }) => {
    const { db, act } = within(locals);
    const done = await tokens.revoke(db, act, textOf(await request.formData(), 'id'));
    if (!done.ok) return fail(404, { gone: true });
    return { revoked: true };
  },
} satisfies Actions;
