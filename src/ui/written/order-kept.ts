import type { ChoiceKey } from '#engine/written/choice-key.ts';
import type { Posed } from '#engine/written/posed.ts';

/** The order in which the steps of a question were posed: where putting them in order begins. */
export const orderKept = (posed: Posed): readonly ChoiceKey[] =>
  posed.kind === 'order' ? posed.choices.map(({ key }) => key) : [];

/** The same with one moved by so many places; as it was where it would leave the list. */
export function moved<T>(order: readonly T[], from: number, by: number): readonly T[] {
  const to = from + by;
  if (from < 0 || from >= order.length || to < 0 || to >= order.length) return order;
  const rest = order.filter((_, place) => place !== from);
  return [...rest.slice(0, to), order[from]!, ...rest.slice(to)];
}
