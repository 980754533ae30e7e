import type { Method } from '#engine/method/method.ts';
import type { Leak } from '#engine/water/water-test.ts';
import { say } from '#ui/language/language.svelte.ts';
import { m } from '#ui/messages/generated/messages.js';

export function placeWords({ water }: Method, id: string): string {
  const place = water.places.find((one) => one.id === id);
  return place ? say(place.name) : id;
}

/** Where the water ends, for the list. */
export const intoWords = (method: Method, { into }: Leak): string =>
  m.water_into({ place: placeWords(method, into) });

/** The joints it passes, for the list. */
export const jointsWords = ({ path }: Leak): string =>
  path.map(({ joint }) => say(joint.name)).join(' › ');

/** The leaks that an item of the punch list opens, by place in the water test. */
export const leaksOf = (leaks: readonly Leak[], item: number): readonly number[] =>
  leaks.flatMap(({ breaches }, place) => (breaches.includes(item) ? [place] : []));
