import { untrack } from 'svelte';
import { afterPaint } from '#ui/frame/after-paint.ts';

/**
 * Something costly made of something cheap, shown a moment late: what was tapped is painted first, and
 * then this follows. The first time it is made at once, on the server too. The input is compared by
 * identity, and must be cheap itself: it is read while the tap is answered.
 */
export function unhurried<Input, Output>(
  inputOf: () => Input,
  make: (input: Input) => Output,
): { readonly current: Output } {
  let made = untrack(inputOf);
  let current = $state.raw(untrack(() => make(made)));
  $effect(() => {
    const input = inputOf();
    if (input === made) return;
    return afterPaint(() => {
      made = input;
      current = make(input);
    });
  });
  return {
    get current() {
      return current;
    },
  };
}
