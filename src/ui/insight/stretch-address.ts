import type { MethodBundle } from '#engine/compile/method-bundle.ts';
import { stretchAround } from '#engine/marking/stretch.ts';
import type { Method, StepId } from '#engine/method/method.ts';
import { sequenceOf } from '#engine/method/sequence.ts';
import { allSites, holds, type Site } from '#engine/method/site.ts';
import type { Spot } from '#engine/tally/spot.ts';
import { addressOf } from '#ui/mockup/wall-address.ts';

const stepsOf = (spot: Spot): readonly StepId[] =>
  spot.kind === 'order' ? [spot.before, spot.after] : [spot.step];

/** The given wall, or the most usual one on which all that is told of there stands. */
function wallWith({ site: questions, steps }: Method, site: Site, told: readonly StepId[]): Site {
  const concerned = steps.filter(({ id }) => told.includes(id));
  const has = (wall: Site): boolean => concerned.every(({ when }) => holds(when, wall));
  return has(site) ? site : (allSites(questions).find(has) ?? site);
}

/** Where the stretch of a wall around what goes wrong is practised; the whole wall where it is all of it. */
export function stretchAddress(
  { method, dataSheet }: Pick<MethodBundle, 'method' | 'dataSheet'>,
  site: Site,
  spot: Spot,
): string {
  const told = stepsOf(spot);
  const wall = wallWith(method, site, told);
  const sequence = sequenceOf(method, dataSheet, wall);
  const order = sequence.ok ? sequence.value.steps.map(({ id }) => id) : [];
  const { practised } = stretchAround(order, new Set(told));
  const [from, to] = [practised[0], practised.at(-1)];
  const part = from && to && practised.length < order.length ? { part: [from, to] as const } : {};
  return addressOf({ method: method.id, site: wall, mode: 'own', seed: '1', ...part });
}
