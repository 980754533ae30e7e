import { originOf } from '#server/certificates/addresses.ts';
import { keySet } from '#server/certificates/published.ts';
import { publicAnswer } from '#server/certificates/public-answer.ts';
import { desk } from '#server/desk.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = async ({ url }) => {
  const { database, settings } = await desk();
  const set = await keySet(database.db, originOf(settings, url));
  return publicAnswer(set, 'application/jwk-set+json');
};
