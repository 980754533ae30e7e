import { desk } from '#server/desk.ts';
import { health } from '#server/operations/health.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = () => health(async () => (await desk()).database.db);
