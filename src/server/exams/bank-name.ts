/** What stands several times on a form, each time in other numbers, has a name for each and one in the bank. */

/** Stands in no name, and means nothing in an address. */
const mark = '~';

/** `seam-tape`, `seam-tape~2`. */
export function namedApart(names: readonly string[]): readonly string[] {
  const times = new Map<string, number>();
  return names.map((name) => {
    const time = (times.get(name) ?? 0) + 1;
    times.set(name, time);
    return time === 1 ? name : `${name}${mark}${time}`;
  });
}

/** By which it is retired, and named in lists. */
export const bankName = (item: string): string => item.split(mark)[0] ?? item;
