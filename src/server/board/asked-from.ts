/** What the address of the board asks for. What is not one of the choices is as if it were not there. */
import { type Asked, boardOrders, pageLengths } from './board.ts';

export type AskedFields = Readonly<
  Record<'search' | 'crew' | 'qualification' | 'state' | 'order' | 'most', string>
>;

export function askedFrom(query: URLSearchParams): {
  readonly fields: AskedFields;
  readonly asked: Asked;
} {
  const of = (name: string): string => query.get(name) ?? '';
  const order = boardOrders.find((one) => one === of('order')) ?? 'crew';
  const most = pageLengths.find((one) => String(one) === of('most')) ?? pageLengths[0];
  const fields = {
    search: of('search'),
    crew: of('crew'),
    qualification: of('qualification'),
    state: of('state'),
    order,
    most: String(most),
  };
  return { fields, asked: { ...fields, order, most, after: of('after') || undefined } };
}
