import { m } from '#ui/messages/generated/messages.js';

/** Shares that people say: those with small numbers, and of the rare ones 1 in so many. */
const said: readonly (readonly [some: number, of: number])[] = [
  ...[2, 3, 4, 5, 6, 8, 10].map((of) => [1, of] as const),
  ...[
    [2, 3],
    [3, 4],
    [9, 10],
    [2, 5],
    [3, 5],
    [4, 5],
    [3, 10],
    [7, 10],
  ].map(([some, of]) => [some!, of!] as const),
];

const rarest = 0.005;

/** A share as said on a site: `1 in 5`, `2 in 3`, `never`. Near enough, never further off than 4 in 100. */
export function shareWords(share: number): string {
  if (share < rarest) return m.share_never();
  if (share > 1 - rarest) return m.share_always();
  if (share < 0.095) return m.share_one_in({ of: Math.round(1 / share) });
  if (share > 0.94) return m.share_some_in({ some: 19, of: 20 });
  const off = ([some, of]: readonly [number, number]): number => Math.abs(share - some / of);
  const [some, of] = said.reduce((best, one) => (off(one) < off(best) ? one : best));
  return some === 1 ? m.share_one_in({ of }) : m.share_some_in({ some, of });
}

export const percentOf = (share: number): number => Math.round(share * 100);
