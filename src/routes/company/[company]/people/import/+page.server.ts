import { fail } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { textOf } from '#server/access/text-of.ts';
import { decoded } from '#server/people/roster/decode.ts';
import { mostRows } from '#server/people/roster/read-rows.ts';
import * as roster from '#server/people/roster/roster.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = () => ({ mostRows });

export const actions = {
  preview: async ({ locals, request }) => {
    const { db, act } = within(locals);
    const file = (await request.formData()).get('file');
    if (!(file instanceof File) || file.size === 0) {
      return fail(400, { fault: { code: 'MISSING' as const } });
    }
    const text = decoded(new Uint8Array(await file.arrayBuffer()));
    if (!text.ok) return fail(400, { fault: text.error });
    const plan = await roster.preview(db, act.by.company, text.value);
    if (!plan.ok) return fail(400, { fault: plan.error });
    return { plan: plan.value, text: text.value, fileName: file.name };
  },

  write: async ({ locals, request }) => {
    const { db, act } = within(locals);
    const form = await request.formData();
    const [text, fileName] = [textOf(form, 'text'), textOf(form, 'fileName')];
    const how = { digest: textOf(form, 'digest'), leaveOut: form.has('leaveOut') };
    const done = await roster.write(db, act, text, how);
    if (done.ok) return { written: done.value };
    const { error } = done;
    if (!('plan' in error)) return fail(400, { fault: error });
    return fail(409, { plan: error.plan, text, fileName, meanwhile: error.code === 'CHANGED' });
  },
} satisfies Actions;
