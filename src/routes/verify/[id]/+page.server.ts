import { error } from '@sveltejs/kit';
import { keyAddress, originOf } from '#server/certificates/addresses.ts';
import { list } from '#server/certificates/signing-keys.ts';
import { ask } from '#server/certificates/verify-door.ts';
import { desk } from '#server/desk.ts';
import type { PageServerLoad } from './$types';

export const load: PageServerLoad = async (event) => {
  event.setHeaders({ 'cache-control': 'private, no-store' });
  const { database, settings, askers } = await desk();
  const { db } = database;
  const { at } = event.locals;
  const asked = await ask({ db, askers }, event.params.id, event.getClientAddress(), at);
  if (!asked.ok) error(asked.error.code === 'ABSENT' ? 404 : 429);
  const origin = originOf(settings, event.url);
  const keys = await list(db);
  return {
    at,
    origin,
    certificate: asked.value,
    keys: keys.map(({ id, key }) => ({ kid: keyAddress(origin, id), key })),
  };
};
