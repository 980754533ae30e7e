import '@testing-library/jest-dom/vitest';
import { configure } from '@testing-library/svelte';

// What is fetched on demand takes its time where many tests share two cores.
configure({ asyncUtilTimeout: 10_000 });

/** jsdom lays nothing out, so no size ever changes. */
class SizeOfNothing implements ResizeObserver {
  observe(): void {}
  unobserve(): void {}
  disconnect(): void {}
}

globalThis.ResizeObserver ??= SizeOfNothing;

/** jsdom has no screen either, so that no question about it is answered with yes. */
globalThis.matchMedia ??= (media) =>
  Object.assign(new EventTarget(), {
    media,
    matches: false,
    onchange: null,
    addListener: () => {},
    removeListener: () => {},
  });
