import { commonDimension, dimensionPhrase } from '#engine/measure/dimension.ts';
import { parseUnit } from '#engine/measure/parse-unit.ts';
import type { Kind } from '#engine/takeoff/formula.ts';
import { kindPhrase } from '#engine/takeoff/formula-kinds.ts';
import { isTape, tapeStyles, unitOfStyle, type Style } from '#engine/takeoff/style.ts';
import { placeAt, type Path, type SourceFile } from './source-file.ts';

/**
 * The style that is written there, of the kind of what it styles; `null` where it is none. Of a kind
 * that is not known nothing is said.
 */
export function styleFor(
  file: SourceFile,
  path: Path,
  written: string,
  kind: Kind | undefined,
): Style | null {
  const place = placeAt(file, path);
  if (written === '') return null;
  if (!isTape(written) && !parseUnit(written).ok) {
    const message = `"${written}" is no unit.`;
    const cure = `Write a unit such as in, ft2 or gal, or one of: ${tapeStyles.join(', ')}.`;
    file.fault('UNKNOWN_UNIT', place, message, cure);
    return null;
  }
  if (kind === undefined) return written;
  const { dimension } = unitOfStyle(written);
  if (kind !== 'truth' && commonDimension(kind, dimension)) return written;
  const message = `This is ${kindPhrase(kind)}, and “${written}” measures ${dimensionPhrase(dimension)}.`;
  file.fault('UNIT_MISMATCH', place, message, 'Write a unit of its kind.');
  return null;
}
