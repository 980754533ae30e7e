import { ask, verificationAnswer } from '#server/certificates/verify-door.ts';
import { desk } from '#server/desk.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = async ({ params, locals, getClientAddress }) => {
  const { database, askers } = await desk();
  const door = { db: database.db, askers };
  return verificationAnswer(await ask(door, params.id, getClientAddress(), locals.at));
};
