import { oneKey } from '#server/certificates/published.ts';
import { publicAnswer } from '#server/certificates/public-answer.ts';
import { desk } from '#server/desk.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = async ({ params }) => {
  const { database } = await desk();
  return publicAnswer(await oneKey(database.db, params.key), 'application/jwk+json');
};
