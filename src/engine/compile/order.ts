/**
 * Whether the order of the work is one that can be done, on every site.
 *
 * Where each constraint points back up the list, the list itself is a correct order of every site,
 * and nothing else needs asking: O(constraints). Only otherwise is each site searched for circles,
 * and sites on which the same constraints bind are searched once.
 */
import type { Method } from '#engine/method/method.ts';
import { partialOrder } from '#engine/method/partial-order.ts';
import { allSites, type Site } from '#engine/method/site.ts';
import { binds, soundArcs, type Arc } from './constraints.ts';
import { keyAt, placeAt, type SourceFile } from './source-file.ts';
import { wallsPhrase } from './which-walls.ts';

/** Every site is built, drawn and proved; more than this are not the variants of one method. */
export const mostSites = 4096;

export function checkOrder(file: SourceFile, method: Method): void {
  const arcs = soundArcs(file, method);
  const sites = method.site.reduce((count, { values }) => count * values.length, 1);
  if (sites > mostSites) {
    const message = `The questions make ${sites} kinds of wall; a method has at most ${mostSites}.`;
    const cure = 'Ask fewer questions, or make two methods of it.';
    file.fault('TOO_MANY_SITES', keyAt(file, ['site']), message, cure);
    return;
  }
  const downward = arcs.filter((arc) => arc.before > arc.after);
  if (downward.length === 0) return;
  const circular = checkCircles(file, method, arcs);
  for (const arc of downward.filter((each) => !circular.has(each))) {
    file.fault(
      'WRITTEN_OUT_OF_ORDER',
      placeAt(file, arc.path),
      `"${method.steps[arc.before]!.id}" must come before this step, and is written after it.`,
      'Write the steps in one correct order.',
    );
  }
}

type Circle = { readonly arcs: readonly Arc[]; readonly sites: readonly Site[] };

/** Reports each circle once, at a constraint that points down the list; gives all of these. */
function checkCircles(file: SourceFile, method: Method, arcs: readonly Arc[]): ReadonlySet<Arc> {
  const sites = allSites(method.site);
  const found = circlesOn(sites, method, arcs);
  const blamed = new Set<Arc>();
  for (const circle of found) {
    const downward = circle.arcs.filter((arc) => arc.before > arc.after);
    downward.forEach((arc) => blamed.add(arc));
    file.fault(
      'CIRCULAR_ORDER',
      placeAt(file, downward[0]!.path),
      `${wallsPhrase(circle.sites, sites)} each of these must come before the next: ${walk(method, circle)}.`,
      'Leave out one of the constraints, or give it a condition.',
    );
  }
  return blamed;
}

function circlesOn(
  sites: readonly Site[],
  method: Method,
  arcs: readonly Arc[],
): readonly Circle[] {
  const groups = Map.groupBy(sites, (site) =>
    arcs.map((arc) => (binds(arc, site) ? '1' : '0')).join(''),
  );
  const found = new Map<string, Circle>();
  for (const [binding, alike] of groups) {
    let rest = arcs.filter((_, index) => binding[index] === '1');
    for (let circle = circleIn(rest, method); circle.length > 0; circle = circleIn(rest, method)) {
      const key = circle.map(({ before }) => before).join();
      found.set(key, { arcs: circle, sites: [...(found.get(key)?.sites ?? []), ...alike] });
      const broken = circle.find((arc) => arc.before > arc.after);
      rest = rest.filter((arc) => arc !== broken);
    }
  }
  return [...found.values()];
}

/** The constraints of one of the shortest circles, or none. */
function circleIn(arcs: readonly Arc[], { steps }: Method): readonly Arc[] {
  const order = partialOrder(
    steps.length,
    arcs.map(({ before, after }) => [before, after] as const),
  );
  if (order.ok) return [];
  const { cycle } = order.error;
  return cycle.flatMap((before, index) => {
    const after = cycle[(index + 1) % cycle.length];
    return arcs.find((arc) => arc.before === before && arc.after === after) ?? [];
  });
}

function walk({ steps }: Method, { arcs }: Circle): string {
  const names = [...arcs, arcs[0]!].map(({ before }) => `"${steps[before]!.id}"`);
  return names.join(', ');
}
