import { answer } from '#server/api/answer.ts';
import { assignment } from '#server/api/endpoints/assignments.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = (event) => answer(assignment, event);
