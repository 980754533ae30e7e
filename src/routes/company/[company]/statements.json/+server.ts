import { json } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { schemesNow } from '#server/board/qualifications.ts';
import { page } from '#server/statements/statements.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = async ({ locals, url }) => {
  const { db, act } = within(locals);
  const { company } = act.by;
  const home = `${url.origin}/company/${company}`;
  const after = url.searchParams.get('after') ?? '';
  const { statements, next } = await page(db, company, home, await schemesNow(), after);
  const more = next && `${url.pathname}?${new URLSearchParams({ after: next })}`;
  return json({ statements, ...(more ? { more } : {}) });
};
