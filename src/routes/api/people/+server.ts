import { answer } from '#server/api/answer.ts';
import { people } from '#server/api/endpoints/people.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = (event) => answer(people, event);
