import { fail, redirect } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { textOf } from '#server/access/text-of.ts';
import { agreement } from '#server/checks/agreement.ts';
import { begin } from '#server/checks/begin.ts';
import { underWay } from '#server/checks/checks.ts';
import { toExamine } from '#server/checks/to-examine.ts';
import { currentContent } from '#server/current-content.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, url }) => {
  const { db, act } = within(locals);
  const content = await currentContent();
  const mine = await underWay(db, act);
  return {
    fresh: freshId(),
    mine: mine.map(({ id, candidateName, scheme, part, begunAt }) => {
      const known = content.schemes.get(scheme as never);
      const title = known?.parts.find((one) => one.id === part)?.title;
      return { id, candidateName, begunAt, title, schemeTitle: known?.title };
    }),
    ...(await toExamine(db, act, content, url.searchParams.get('after') ?? undefined)),
    agreement: await agreement(db, act.by.company),
  };
};

export const actions: Actions = {
  begin: async ({ locals, request }) => {
    const { db, act } = within(locals);
    const form = await request.formData();
    const [id, application, part] = ['id', 'application', 'part'].map((name) => textOf(form, name));
    const asked = { id: id!, application: application!, part: part! };
    const begun = await begin(db, act, await currentContent(), asked);
    if (!begun.ok) return fail(400, { fault: begun.error });
    redirect(303, `/checks/${begun.value}?company=${act.by.company}`);
  },
};
