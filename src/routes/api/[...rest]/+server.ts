import { refused } from '#server/api/problem.ts';
import type { RequestHandler } from './$types';

/** An address that the API does not have, told in its form. */
export const fallback: RequestHandler = () => refused({ code: 'ABSENT' });
