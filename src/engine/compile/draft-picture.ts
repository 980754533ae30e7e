import { kindPhrase } from '#engine/takeoff/formula-kinds.ts';
import type { Picture } from '#engine/takeoff/family.ts';
import type { Kind, Term } from '#engine/takeoff/formula.ts';
import { isPlain } from '#engine/takeoff/formula-kinds.ts';
import { measuresOf, neededMeasures } from '#engine/takeoff/picture.ts';
import type { Names } from './draft-names.ts';
import type { WrittenFamily } from './family.ts';
import { placeOfAll, resolved } from './formula.ts';
import { nearestCure } from './names.ts';
import { missingKey } from './reader.ts';
import { keyAt } from './source-file.ts';

const keys = ['picture', 'second-picture'] as const;

/** What the pictures of a family show, each measure of the kind that is drawn. */
export function draftPictures(names: Names, family: WrittenFamily): readonly (Picture | null)[] {
  return keys.flatMap((key) => {
    const picture = family[key];
    return picture ? [draftPicture(names, key, picture)] : [];
  });
}

function draftPicture(
  names: Names,
  key: (typeof keys)[number],
  picture: NonNullable<WrittenFamily['picture']>,
): Picture | null {
  const { file } = names;
  const { kind } = picture;
  if (kind === null) return null;
  const path = [key, 'shows'];
  const known = measuresOf(kind);
  const missing = neededMeasures(kind).filter(
    (measure) => !picture.shows.some(([written]) => written === measure),
  );
  missing.forEach((measure) => missingKey(file, keyAt(file, path), measure));
  const shown = picture.shows.map(([measure, written]): readonly [string, Term] | null => {
    const wanted = known.get(measure);
    if (wanted === undefined) {
      const message = `"${measure}" is not a measure of this picture.`;
      const cure = nearestCure(measure, known.keys());
      file.fault('UNKNOWN_MEASURE', keyAt(file, [...path, measure]), message, cure);
      return null;
    }
    const found = written && resolved(names, written);
    if (!written || !found) return null;
    const { root } = found.formula;
    if (isOfKind(root.kind, wanted)) return [measure, root];
    const message = `This is ${kindPhrase(root.kind)}, and ${measure} is drawn as a ${wanted}.`;
    file.fault('UNIT_MISMATCH', placeOfAll(written), message, 'Show a value of that kind.');
    return null;
  });
  const sound = shown.filter((pair) => pair !== null);
  return sound.length < shown.length || missing.length > 0 ? null : { kind, shows: new Map(sound) };
}

const isOfKind = (kind: Kind, wanted: string): boolean =>
  kind === 'truth' ? wanted === 'truth' : wanted === 'count' ? isPlain(kind) : kind.name === wanted;
