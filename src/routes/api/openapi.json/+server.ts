import { openApi } from '#server/api/document.ts';
import type { RequestHandler } from './$types';

const headers = {
  'content-type': 'application/json',
  'cache-control': 'no-cache',
  'access-control-allow-origin': '*',
};

/** The same for everybody until the next build. */
let text: string | undefined;

export const GET: RequestHandler = () => {
  text ??= JSON.stringify(openApi());
  return new Response(text, { headers });
};
