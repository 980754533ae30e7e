import { quantity } from '#engine/measure/conversion.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { one } from '#engine/measure/rational.ts';
import { quantityOf } from '#engine/compile/quantity.ts';
import { wrongShape, type Reader } from '#engine/compile/reader.ts';
import { placeOf } from '#engine/compile/source-file.ts';
import { plain } from '#engine/compile/words.ts';

const written = quantityOf('ratio');

/** Some of a whole, or all of it: above 0, at most 100 %. */
export const share: Reader<Quantity<'ratio'>> = {
  blank: quantity(100, '%'),
  read: (here) => {
    const found = written.read(here);
    if (!found || !here.node) return share.blank;
    if (found.value.gt(0n) && found.value.lte(one)) return found;
    here.file.fault(
      'SHARE_OUT_OF_RANGE',
      placeOf(here.node),
      'This share is nothing, or more than the whole.',
      'Write a share above 0 % and not above 100 %: 75 %.',
    );
    return share.blank;
  },
};

/** A whole number, 1 or more. */
export const count: Reader<number> = {
  blank: 1,
  read: (here) => {
    const found = plain.read(here);
    if (/^[1-9]\d{0,3}$/.test(found)) return Number(found);
    if (found !== '') wrongShape(here, 'a whole number above 0', 'Write one in digits: 3.');
    return count.blank;
  },
};
