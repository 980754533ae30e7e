import { unhurried } from '#ui/wall/unhurried.svelte.ts';

/** Something to tap that a slow picture follows; `made` tells each time it was drawn. */
export function slowPicture(made: (of: number) => void) {
  let tapped = $state(0);
  let shown!: { readonly current: string };
  const stop = $effect.root(() => {
    shown = unhurried(
      () => tapped,
      (of) => {
        made(of);
        return `picture ${of}`;
      },
    );
  });
  return {
    tap: () => (tapped += 1),
    get shown() {
      return shown.current;
    },
    stop,
  };
}
