/** What is wanted of a map, in the order of the whole, each once. */
export function among<Id, Value>(
  all: ReadonlyMap<Id, Value>,
  wanted: readonly Id[],
): ReadonlyMap<Id, Value> {
  const ids = new Set(wanted);
  return new Map([...all].filter(([id]) => ids.has(id)));
}
