import { answer } from '#server/api/answer.ts';
import { board } from '#server/api/endpoints/board.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = (event) => answer(board, event);
