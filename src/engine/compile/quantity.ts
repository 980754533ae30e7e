import {
  commonDimension,
  dimension,
  dimensionPhrase,
  type Dimension,
  type DimensionName,
} from '#engine/measure/dimension.ts';
import type { MeasureFault } from '#engine/measure/fault.ts';
import { parseQuantity } from '#engine/measure/parse-quantity.ts';
import { isA, type Quantity } from '#engine/measure/quantity.ts';
import { quantity } from '#engine/measure/conversion.ts';
import { mapped, type Here, type Reader } from './reader.ts';
import { placeAt, placeOf, type Path, type Place, type SourceFile } from './source-file.ts';
import { plain } from './words.ts';

const examples: Partial<Record<DimensionName, string>> = {
  length: '8 in, 1 1/2 in or 50 ft',
  area: '12 ft2',
  volume: '1 gal or 10 fl oz',
  time: '90 s, 6 min or 1 h',
  temperature: '40 °F or 5 °C',
  'temperature-difference': '5 F° or 3 C°',
  angle: '45 deg',
  count: '2 pieces',
  ratio: '60 %, 3/2 or 1',
};

const inItsUnit = (name: DimensionName): string =>
  examples[name] ? `Write it like ${examples[name]}.` : 'Write it in the same units.';

/** `null` where what is written is no quantity. */
const read = <D extends DimensionName>(wanted?: D): Reader<Quantity<D> | null> => ({
  blank: null,
  read: (here) => {
    const written = plain.read(here);
    if (written === '' || !here.node) return null;
    const parsed = parseQuantity(written, wanted);
    if (parsed.ok) return parsed.value;
    // Without the wanted kind in mind it may be a quantity still, and then of another kind.
    const other = parseQuantity(written);
    if (other.ok && wanted)
      mismatch(here.file, placeOf(here.node), other.value, dimension(wanted as never));
    else badQuantity(here, written, parsed.error);
    return null;
  },
});

function badQuantity(
  { file, node }: Here,
  written: string,
  { message, at, length }: MeasureFault,
): void {
  if (!node) return;
  const whole = placeOf(node);
  // A quoted or folded text has marks of its own, and does not stand as it reads.
  const start = file.text.indexOf(written, whole.from);
  const stands = start >= 0 && start + written.length <= whole.to;
  const place = stands ? { from: start + at, to: start + at + Math.max(1, length) } : whole;
  const [what = message.en, ...cures] = message.en.split(/(?<=\.) (?=[A-Z])/);
  const cure = cures.join(' ') || 'Write a number and its unit: 8 in, 1 1/2 in, 40 °F, 60 %.';
  file.fault('BAD_QUANTITY', place, what, cure);
}

function mismatch(file: SourceFile, place: Place, found: Quantity, wanted: Dimension): void {
  const message = `This is ${dimensionPhrase(found.dimension)}, not ${dimensionPhrase(wanted)}.`;
  file.fault('UNIT_MISMATCH', place, message, inItsUnit(wanted.name));
}

export const anyQuantity: Reader<Quantity | null> = read();

export const quantityOf = <D extends DimensionName>(wanted: D): Reader<Quantity<D> | null> =>
  read(wanted);

/** How far apart two values are: of temperatures, a difference, though it is written in °F too. */
export const difference: Reader<Quantity | null> = {
  blank: null,
  read: (here) => {
    const found = anyQuantity.read(here);
    if (!found || !isA(found, 'temperature')) return found;
    return quantityOf('temperature-difference').read(here);
  },
};

/** Working time; nothing at all where it could not be read. */
export const timeTaken: Reader<Quantity<'time'>> = mapped(
  quantityOf('time'),
  (found) => found ?? quantity(0, 's'),
);

export function isOfDimension(
  file: SourceFile,
  path: Path,
  found: Quantity,
  wanted: Dimension,
): boolean {
  if (commonDimension(found.dimension, wanted)) return true;
  mismatch(file, placeAt(file, path), found, wanted);
  return false;
}

/** Whether it can be compared with what stands elsewhere of the same number. */
export const areAlike = (file: SourceFile, path: Path, found: Quantity, like: Quantity): boolean =>
  isOfDimension(file, path, found, like.dimension);

/** Whether it can lie between two values of that kind. */
export const isDistance = (file: SourceFile, path: Path, found: Quantity, of: Quantity): boolean =>
  isOfDimension(
    file,
    path,
    found,
    isA(of, 'temperature') ? dimension('temperature-difference') : of.dimension,
  );
