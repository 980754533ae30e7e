import { partialOrder } from '#engine/method/partial-order.ts';
import type { Scheme, SchemeId } from '#engine/exam/scheme.ts';
import type { Opened } from '#engine/compile/opened.ts';
import { placeAt } from '#engine/compile/source-file.ts';

/** Reports each circle of schemes that require one another, once, in the file that comes first. */
export function checkCircles(schemes: ReadonlyMap<SchemeId, Opened<Scheme>>): void {
  const ids = [...schemes.keys()];
  const place = new Map(ids.map((id, index) => [id, index]));
  let arcs = [...schemes].flatMap(([id, { value }]) =>
    value.requires.flatMap((required) => {
      const before = place.get(required);
      return before === undefined ? [] : [[before, place.get(id)!] as const];
    }),
  );
  for (;;) {
    const order = partialOrder(ids.length, arcs);
    if (order.ok) return;
    const { cycle } = order.error;
    const first = Math.min(...cycle);
    const required = cycle.at(cycle.indexOf(first) - 1) ?? first;
    report(schemes, ids, cycle, first, required);
    arcs = arcs.filter(([before, after]) => before !== required || after !== first);
  }
}

function report(
  schemes: ReadonlyMap<SchemeId, Opened<Scheme>>,
  ids: readonly SchemeId[],
  cycle: readonly number[],
  first: number,
  required: number,
): void {
  const opened = schemes.get(ids[first]!);
  if (!opened) return;
  const { file, value } = opened;
  const at = ['requires', value.requires.indexOf(ids[required]!)];
  const walk = [...cycle, cycle[0]!].map((index) => `"${ids[index]}"`).join(', ');
  file.fault(
    'CIRCULAR_SCHEMES',
    placeAt(file, at),
    `Each of these requires the one before it: ${walk}.`,
    'Leave out one of the requirements.',
  );
}
