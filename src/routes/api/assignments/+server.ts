import { answer } from '#server/api/answer.ts';
import { assignments } from '#server/api/endpoints/assignments.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = (event) => answer(assignments, event);
