import { tick } from 'svelte';
import { offline } from '#ui/offline/offline.svelte.ts';

const own = { build: 'b1', revision: 'r1' };
const newer = { build: 'b2', revision: 'r1' };

/** A browser in which a newer version waits, and whether the page announces it. */
export function newerWaiting(): { readonly isAnnounced: () => Promise<boolean>; end: () => void } {
  const workers = Object.assign(new EventTarget(), {
    register: () => Promise.resolve(undefined),
    ready: new Promise(() => undefined),
  });
  Object.defineProperty(navigator, 'serviceWorker', { value: workers, configurable: true });
  const stop = offline.start(own);
  const standing = { used: own, ready: newer };
  workers.dispatchEvent(new MessageEvent('message', { data: standing }));
  return {
    isAnnounced: async () => {
      await tick();
      return offline.isAnnounced;
    },
    end: () => {
      const over = { used: own, ready: undefined };
      workers.dispatchEvent(new MessageEvent('message', { data: over }));
      stop();
      Reflect.deleteProperty(navigator, 'serviceWorker');
    },
  };
}
