import { m } from '#ui/messages/generated/messages.js';
import type { Outbox } from './outbox.svelte.ts';

type State = Pick<Outbox, 'me' | 'waiting' | 'unclaimed' | 'refused' | 'trouble'>;

/** How far sending is, in a line; undefined for who never signed in here. */
export function stateWords({ me, waiting, unclaimed, refused, trouble }: State) {
  const count = waiting.length;
  if (!me?.name) return count > 0 ? m.sending_sign_in({ count }) : undefined;
  if (refused.length > 0) return m.sending_refused({ count: refused.length });
  if (unclaimed.length > 0) return m.sending_unclaimed({ count: unclaimed.length });
  if (count === 0) return m.sending_all();
  if (trouble === 'signal') return m.sending_no_signal({ count });
  if (trouble === 'server') return m.sending_no_server({ count });
  return m.sending_now({ count });
}
