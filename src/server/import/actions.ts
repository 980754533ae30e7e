/** The two actions of a page on which a file is looked at and then written. */
import { fail, type RequestEvent } from '@sveltejs/kit';
import type { FileFault, ImportPlan } from '#engine/record/import-plan.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { within } from '../access/act.ts';
import { textOf } from '../access/text-of.ts';
import type { Db } from '../database/open-database.ts';
import type { Act } from '../people/member.ts';
import { decoded } from './decode.ts';
import type { How, WriteFault } from './looked-at.ts';

type Import<Plan extends ImportPlan, Written> = {
  readonly preview: (db: Db, act: Act, text: string) => Promise<Result<Plan, FileFault>>;
  readonly write: (
    db: Db,
    act: Act,
    text: string,
    how: How,
  ) => Promise<Result<Written, WriteFault<Plan>>>;
};

/** A file that was chosen, or rows that were pasted; `name` is empty for these. */
async function sentText(
  form: FormData,
): Promise<Result<{ readonly text: string; readonly name: string }, FileFault>> {
  const file = form.get('file');
  const pasted = textOf(form, 'pasted');
  const isFile = file instanceof File && file.size > 0;
  if (isFile && pasted.trim() !== '') return fault({ code: 'TWO_SOURCES' });
  if (!isFile && pasted.trim() === '') return fault({ code: 'MISSING' });
  const bytes = isFile
    ? new Uint8Array(await file.arrayBuffer())
    : new TextEncoder().encode(pasted);
  const text = decoded(bytes);
  return text.ok ? ok({ text: text.value, name: isFile ? file.name : '' }) : text;
}

export const importActions = <Plan extends ImportPlan, Written>({
  preview,
  write,
}: Import<Plan, Written>) => ({
  preview: async ({ locals, request }: RequestEvent) => {
    const { db, act } = within(locals);
    const form = await request.formData();
    const pasted = textOf(form, 'pasted');
    const sent = await sentText(form);
    if (!sent.ok) return fail(400, { fault: sent.error, pasted });
    const { text, name: fileName } = sent.value;
    const plan = await preview(db, act, text);
    if (!plan.ok) return fail(400, { fault: plan.error, pasted });
    return { plan: plan.value, text, fileName };
  },

  write: async ({ locals, request }: RequestEvent) => {
    const { db, act } = within(locals);
    const form = await request.formData();
    const [text, fileName] = [textOf(form, 'text'), textOf(form, 'fileName')];
    const how = { digest: textOf(form, 'digest'), leaveOut: form.has('leaveOut') };
    const done = await write(db, act, text, how);
    if (done.ok) return { written: done.value };
    const { error } = done;
    if (!('plan' in error)) return fail(400, { fault: error });
    return fail(409, { plan: error.plan, text, fileName, meanwhile: error.code === 'CHANGED' });
  },
});
