/**
 * A renewal asks most about what has faded. Its blueprint stays the scheme's in size and in topics: of each
 * topic half its questions are asked whoever sits there, rounded up; the others go where more is expected
 * to be gone, dealt by the divisors 1, 3, 5 … (Sainte-Laguë's, which gives whole shares exactly). Where
 * all has faded alike it is the blueprint itself. Both are choices of this project.
 */
import type { Blueprint } from './scheme.ts';

/** Of a topic, by its id, the share that is expected to be gone: 0 to 1. */
export type Faded = ReadonlyMap<string, number>;

/** A smaller share counts as this one: nothing is known of a person that exactly, and it stays dividable. */
const least = 1e-6;

/**
 * `available`: how many questions each topic has, which no form asks more than. A topic of which nothing
 * is known counts as faded as the others are on average.
 */
export function leaningTo(
  blueprint: Blueprint,
  faded: Faded,
  available: ReadonlyMap<string, number>,
): Blueprint {
  const known = [...blueprint.keys()].flatMap((topic) => faded.get(topic) ?? []);
  if (known.length === 0) return blueprint;
  const usual = mean(known);
  const asked = new Map([...blueprint].map(([topic, count]) => [topic, Math.ceil(count / 2)]));
  const lots = [...blueprint].map(([topic, count]) => ({
    topic,
    weight: Math.floor(count / 2) * Math.max(faded.get(topic) ?? usual, least),
    dealt: 0,
  }));
  const free = [...blueprint.values()].reduce((sum, count) => sum + Math.floor(count / 2), 0);
  for (let left = free; left > 0; left -= 1) {
    const open = lots.filter(({ topic }) => asked.get(topic)! < (available.get(topic) ?? 0));
    if (open.length === 0) return blueprint;
    const next = open.reduce((a, b) => (claimOf(b) > claimOf(a) ? b : a));
    next.dealt += 1;
    asked.set(next.topic, asked.get(next.topic)! + 1);
  }
  return asked;
}

const claimOf = ({ weight, dealt }: { readonly weight: number; readonly dealt: number }): number =>
  weight / (2 * dealt + 1);

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
