import { keySet } from '#server/certificates/published.ts';
import { publicAnswer } from '#server/certificates/public-answer.ts';
import { desk } from '#server/desk.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = async () => {
  const { database } = await desk();
  return publicAnswer(await keySet(database.db), 'application/jwk-set+json');
};
