import { answer } from '#server/api/answer.ts';
import { crews } from '#server/api/endpoints/people.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = (event) => answer(crews, event);
