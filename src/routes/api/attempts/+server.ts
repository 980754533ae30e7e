import { answer } from '#server/api/answer.ts';
import { attempts } from '#server/api/endpoints/attempts.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = (event) => answer(attempts, event);
