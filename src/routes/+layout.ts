import { currentRevision } from '#ui/content/open-content.ts';
import type { LayoutLoad } from './$types';

export const load: LayoutLoad = async ({ fetch }) => ({ revision: await currentRevision(fetch) });
