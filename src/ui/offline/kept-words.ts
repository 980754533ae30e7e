import { m } from '#ui/messages/generated/messages.js';
import type { Keeping } from './offline.svelte.ts';

/** Whether the app will open here without signal, as the foot of the sheet says it. */
export const keptWords = (keeping: Keeping): string => {
  switch (keeping) {
    case 'kept':
      return m.offline_kept();
    case 'keeping':
      return m.offline_keeping();
    case 'insecure':
      return m.offline_insecure();
    case 'refused':
      return m.offline_refused();
    case 'unknown':
      return '—';
  }
};
