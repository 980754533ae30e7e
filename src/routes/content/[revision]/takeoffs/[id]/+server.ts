import { takeoffBundle } from '#engine/compile/takeoff-bundle.ts';
import { sendContent } from '../../send-content.server.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = (event) =>
  sendContent(event, (content) => takeoffBundle(content, event.params.id));
