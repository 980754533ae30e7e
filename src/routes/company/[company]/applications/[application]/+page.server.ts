import { error, fail, redirect } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { may } from '#server/access/rights.ts';
import { textOf } from '#server/access/text-of.ts';
import { currentContent } from '#server/current-content.ts';
import { application, dayOf, partsFor, standingFor } from '#server/exams/applications.ts';
import { sittingsOf } from '#server/exams/invigilated.ts';
import { isSat, setUpSitting } from '#server/exams/set-up.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, params }) => {
  const { db, act } = within(locals);
  const { company, person, roles } = act.by;
  const made = await application(db, company, params.application);
  if (!made) error(404);
  const scheme = (await currentContent()).schemes.get(made.scheme);
  const standing = scheme && (await standingFor(db, scheme, made, dayOf(act.at)));
  const sittings = await sittingsOf(db, company, made.id);
  return {
    application: made,
    title: scheme?.title,
    note: scheme?.note,
    parts: (scheme ? partsFor(scheme, made) : []).map((part) => ({
      id: part.id,
      kind: part.kind,
      title: part.title,
      evidences: part.evidences,
      isSat: isSat(part),
      state: standing?.parts.find((one) => one.part === part.id)?.state,
      sittings: sittings.filter((sitting) => sitting.part === part.id),
    })),
    mayInvigilate: may(roles, 'invigilate') && made.person !== person,
  };
};

export const actions: Actions = {
  sit: async ({ locals, params, request }) => {
    const { db, act } = within(locals);
    const part = textOf(await request.formData(), 'part');
    const asked = { application: params.application, part };
    const made = await setUpSitting(db, act, await currentContent(), asked);
    if (made.ok) redirect(303, `/company/${act.by.company}/sittings/${made.value}`);
    if (made.error.code === 'ABSENT') error(404);
    return fail(400, { part, fault: made.error.code });
  },
};
