/** The outbox of this browser, and when it sends. */
import { browserStore } from '#ui/attempts/browser-store.ts';
import { Outbox } from './outbox.svelte.ts';

/** Browsers offer locks only to pages that are served securely; without, the server tells doubles apart. */
const alone = async (act: () => Promise<void>): Promise<void> => {
  const locks = (navigator as Partial<Pick<Navigator, 'locks'>>).locks;
  if (locks) await locks.request('underlap-sending', act);
  else await act();
};

export const outbox = new Outbox({
  store: browserStore,
  fetch: (address, how) => fetch(address, how),
  alone,
});

const shortest = 20_000;
const longest = 10 * 60_000;

/** Sends now, when there is signal again, and now and then while something waits. Returns the end of it. */
export function startSending(): () => void {
  let pause = shortest;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let isOver = false;

  async function send(): Promise<void> {
    clearTimeout(timer);
    await outbox.send();
    pause = outbox.trouble ? Math.min(2 * pause, longest) : shortest;
    if (!isOver && outbox.waiting.length > 0 && outbox.me?.name) {
      timer = setTimeout(() => void send(), pause);
    }
  }
  const online = () => {
    pause = shortest;
    void send();
  };
  const elsewhere = ({ key }: StorageEvent) => {
    if (key === null || key.startsWith('sending')) outbox.recall();
  };
  addEventListener('online', online);
  addEventListener('storage', elsewhere);
  outbox.recall();
  void send();
  return () => {
    isOver = true;
    clearTimeout(timer);
    removeEventListener('online', online);
    removeEventListener('storage', elsewhere);
  };
}
