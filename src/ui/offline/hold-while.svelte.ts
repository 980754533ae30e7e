import { offline } from './offline.svelte.ts';

/** Nobody is told of a newer version in the middle of work. To be called while a component is made. */
export function holdWhile(isUnderWay: () => boolean): void {
  $effect(() => (isUnderWay() ? offline.hold() : undefined));
}
