import { writtenBundle } from '#engine/compile/written-bundle.ts';
import { sendContent } from '../../send-content.server.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = (event) =>
  sendContent(event, (content) => writtenBundle(content, event.params.id));
