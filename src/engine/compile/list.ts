import { isMap, isSeq, type Node } from 'yaml';
import { wrongShape, type Reader } from './reader.ts';
import { placeOf } from './source-file.ts';

export const list = <T>(reader: Reader<T>, wanted: string): Reader<readonly T[]> => ({
  blank: [],
  read: (here) => {
    if (!isSeq<Node>(here.node)) {
      wrongShape(
        here,
        `a list of ${wanted}`,
        'Write a list: [one, another], or a line with "- " for each.',
      );
      return [];
    }
    return here.node.items.map((node) =>
      reader.read({ file: here.file, node, name: placeOf(node) }),
    );
  },
});

/** A list of two. */
export const pair = <A, B>(
  first: Reader<A>,
  second: Reader<B>,
  wanted: string,
): Reader<readonly [A, B]> => ({
  blank: [first.blank, second.blank],
  read: (here) => {
    const items = isSeq<Node>(here.node) ? here.node.items : [];
    const [a, b] = items;
    if (!a || !b || items.length > 2) {
      wrongShape(here, `a list of two: ${wanted}`, `Write [${wanted}].`);
      return [first.blank, second.blank];
    }
    return [
      first.read({ file: here.file, node: a, name: placeOf(a) }),
      second.read({ file: here.file, node: b, name: placeOf(b) }),
    ];
  },
});

/** Where nothing stands in a list or a group that cannot do without. */
export const atLeastOne = <T>(
  reader: Reader<readonly T[]>,
  wanted: string,
): Reader<readonly T[]> => ({
  ...reader,
  read: (here) => {
    const found = reader.read(here);
    const isWritten = isMap(here.node) || isSeq(here.node);
    if (found.length === 0 && isWritten) {
      const { file, name } = here;
      file.fault(
        'WRONG_SHAPE',
        name,
        `There is no ${wanted} here.`,
        `Write one ${wanted} or more.`,
      );
    }
    return found;
  },
});
