import type { Site } from '#engine/method/site.ts';

/** Opens a sentence about some of all the sites: `On a wall with edge: drip and 3 more,`. */
export function wallsPhrase(some: readonly Site[], all: readonly Site[]): string {
  if (some.length === all.length) return 'On every wall';
  const [first = {}] = some;
  const answers = Object.entries(first).map(([question, value]) => `${question}: ${value}`);
  const others = some.length === 1 ? '' : ` and ${some.length - 1} more`;
  return `On a wall with ${answers.join(', ')}${others},`;
}
