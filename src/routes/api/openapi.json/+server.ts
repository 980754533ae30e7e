import { openApi } from '#server/api/document.ts';
import type { RequestHandler } from './$types';

const headers = { 'cache-control': 'no-cache', 'access-control-allow-origin': '*' };

export const GET: RequestHandler = () => Response.json(openApi(), { headers });
