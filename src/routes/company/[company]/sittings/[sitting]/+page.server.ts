import { error, fail } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { may } from '#server/access/rights.ts';
import { textOf } from '#server/access/text-of.ts';
import { currentContent } from '#server/current-content.ts';
import { grantTime, voidSitting } from '#server/exams/decide-sitting.ts';
import { invigilated } from '#server/exams/invigilated.ts';
import { releaseSitting } from '#server/exams/release.ts';
import { makeStartCode } from '#server/exams/start-code.ts';
import type { Actions, PageServerLoad } from './$types';

const minute = 60_000;

export const load: PageServerLoad = async ({ locals, params }) => {
  const { db, act } = within(locals);
  const asked = { id: params.sitting, at: act.at };
  const sitting = await invigilated(db, await currentContent(), act.by.company, asked);
  if (!sitting) error(404);
  const isOwn = sitting.person === act.by.person;
  // Nobody goes through a sitting of their own before it is released.
  const { marked: _marked, ability: _ability, ...rest } = sitting;
  return {
    sitting: isOwn ? { ...rest, marked: undefined, ability: undefined } : sitting,
    isOwn,
    mayRelease: may(act.by.roles, 'examine') && !isOwn,
  };
};

export const actions: Actions = {
  code: async ({ locals, params }) => {
    const { desk, act } = within(locals);
    const made = await makeStartCode(desk.database, act, params.sitting);
    if (made.ok) return { code: made.value };
    if (made.error === 'ABSENT') error(404);
    return fail(400, { fault: made.error, of: 'code' });
  },

  grant: async ({ locals, params, request }) => {
    const { desk, act } = within(locals);
    const form = await request.formData();
    const milliseconds = Math.round(Number(textOf(form, 'minutes')) * minute);
    const given = {
      grant: { kind: 'more', milliseconds } as const,
      because: textOf(form, 'because'),
    };
    const granted = await grantTime(desk.database, act, params.sitting, given);
    if (granted.ok) return { granted: true };
    if (granted.error === 'ABSENT') error(404);
    return fail(400, { fault: granted.error, of: 'grant' });
  },

  void: async ({ locals, params, request }) => {
    const { desk, act } = within(locals);
    const because = textOf(await request.formData(), 'because');
    const voided = await voidSitting(desk.database, act, params.sitting, because);
    if (voided.ok) return { voided: true };
    if (voided.error === 'ABSENT') error(404);
    return fail(400, { fault: voided.error, of: 'void' });
  },

  release: async ({ locals, params }) => {
    const { desk, act } = within(locals);
    const content = await currentContent();
    const released = await releaseSitting(desk.database, act, content, params.sitting);
    if (released.ok) return { released: true };
    if (released.error.code === 'ABSENT') error(404);
    return fail(400, { fault: released.error.code, of: 'release' });
  },
};
