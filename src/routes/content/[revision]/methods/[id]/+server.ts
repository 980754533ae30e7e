import { methodBundle } from '#engine/compile/method-bundle.ts';
import { sendContent } from '../../send-content.server.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = (event) =>
  sendContent(event, (content) => methodBundle(content, event.params.id));
