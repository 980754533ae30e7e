import { originOf } from '#server/certificates/addresses.ts';
import { issuerDocument } from '#server/certificates/published.ts';
import { publicAnswer } from '#server/certificates/public-answer.ts';
import { desk } from '#server/desk.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = async ({ params, url }) => {
  const { database, settings } = await desk();
  return publicAnswer(await issuerDocument(database.db, originOf(settings, url), params.issuer));
};
