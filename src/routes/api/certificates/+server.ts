import { answer } from '#server/api/answer.ts';
import { certificates } from '#server/api/endpoints/certificates.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = (event) => answer(certificates, event);
