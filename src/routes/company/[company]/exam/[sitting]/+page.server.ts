import { error, fail } from '@sveltejs/kit';
import { toText } from '#engine/compile/transport.ts';
import { within } from '#server/access/act.ts';
import { textOf } from '#server/access/text-of.ts';
import { currentContent } from '#server/current-content.ts';
import { ownItem, ownResult, ownSitting } from '#server/exams/own-sitting.ts';
import { enterCode } from '#server/exams/start-code.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, params, url }) => {
  const { db, act } = within(locals);
  const content = await currentContent();
  const sitting = await ownSitting(db, content, act, params.sitting);
  if (!sitting) error(404);
  const place = Number(url.searchParams.get('question') ?? 1);
  const item = await ownItem(db, content, act, { id: sitting.id, place });
  return {
    sitting,
    first: item && toText(item),
    result: await ownResult(db, act.by, sitting.id),
  };
};

export const actions: Actions = {
  begin: async ({ locals, params, request }) => {
    const { desk, act } = within(locals);
    const code = textOf(await request.formData(), 'code');
    const entered = await enterCode(desk.database, act, params.sitting, code);
    if (entered.ok) return { begun: true };
    if (entered.error.code === 'ABSENT') error(404);
    const isTooOften = entered.error.code === 'TOO_OFTEN';
    return fail(isTooOften ? 429 : 400, { fault: entered.error });
  },
};
