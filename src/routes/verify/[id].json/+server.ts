import { ask, verificationAnswer } from '#server/certificates/verify-door.ts';
import { desk } from '#server/desk.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = async ({ params, locals, getClientAddress }) => {
  const { database } = await desk();
  return verificationAnswer(await ask(database.db, params.id, getClientAddress(), locals.at));
};
