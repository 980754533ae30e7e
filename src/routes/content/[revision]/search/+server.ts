import { searchEntries } from '#ui/search/search-entry.ts';
import { sendContent } from '../send-content.server.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = (event) => sendContent(event, searchEntries);
