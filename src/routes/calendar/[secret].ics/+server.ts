import { error } from '@sveltejs/kit';
import { originOf } from '#server/certificates/addresses.ts';
import { feed } from '#server/certificates/feeds.ts';
import { desk } from '#server/desk.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = async ({ params, locals, url, getClientAddress }) => {
  const { database, settings } = await desk();
  const asked = { secret: params.secret, address: getClientAddress() };
  const where = { origin: originOf(settings, url), at: locals.at };
  const made = await feed(database.db, asked, where);
  if (!made.ok) error(made.error === 'ABSENT' ? 404 : 429);
  return new Response(made.value, {
    headers: {
      'content-type': 'text/calendar; charset=utf-8',
      'cache-control': 'private, no-store',
    },
  });
};
