/** Where a crew goes wrong in computing: parts of problems, and the wrong ways that were recognised. */
import type { Content } from '#engine/compile/content.ts';
import type { Interval } from '#engine/statistics/wilson.ts';
import { wilson } from '#engine/statistics/wilson.ts';
import { fewestToSay } from '#engine/tally/where-it-goes-wrong.ts';
import type { Family, FamilyId } from '#engine/takeoff/family.ts';
import { fillText } from '#engine/takeoff/fill-text.ts';
import type { Text } from '#engine/text.ts';
import { added, type Tallied } from '../attempts/tallied.ts';

type PartTrouble = {
  readonly id: string;
  readonly name: Text;
  readonly judged: number;
  readonly wrong: number;
  readonly rate: Interval;
  readonly isTooFew: boolean;
  /** What those were told who went wrong in a known way, the most often first. */
  readonly slips: readonly { readonly id: string; readonly tell: Text; readonly made: number }[];
};

export type FamilyTrouble = {
  readonly id: FamilyId;
  readonly title: Text;
  readonly parts: readonly PartTrouble[];
};

type Row = { readonly about: string; readonly tally: string };

/** Only what went wrong, in the order of the content; what the content no longer has is left out. */
export function familyTroubles(content: Content, rows: readonly Row[]): readonly FamilyTrouble[] {
  const byFamily = Map.groupBy(rows, ({ about }) => about);
  return [...content.takeoffs.values()].flatMap((family) => {
    const own = byFamily.get(family.id) ?? [];
    const sum = own.map(({ tally }) => JSON.parse(tally) as Tallied).reduce(added, {});
    const parts = partsOf(content, family, sum);
    return parts.length > 0 ? [{ id: family.id, title: family.title, parts }] : [];
  });
}

function partsOf(content: Content, family: Family, sum: Tallied): readonly PartTrouble[] {
  const called = namesIn(content, family);
  return family.parts.flatMap(({ id, name, slips }) => {
    const [judged, wrong] = sum[`${family.id}/part/${id}`] ?? [0, 0];
    if (wrong === 0) return [];
    const made = slips.map((slip) => ({
      id: slip.id,
      tell: fillText(slip.tell, called),
      made: sum[`${family.id}/slip/${id}/${slip.id}`]?.[1] ?? 0,
    }));
    return [
      {
        id,
        name,
        judged,
        wrong,
        rate: wilson(wrong, judged),
        isTooFew: judged < fewestToSay,
        slips: made.filter((slip) => slip.made > 0).toSorted((a, b) => b.made - a.made),
      },
    ];
  });
}

/** Over many problems a value has no one number: it goes by its name. */
function namesIn(content: Content, { dataSheet, givens, parts, sheetNumbers }: Family) {
  const numbers = content.dataSheets.get(dataSheet)?.numbers;
  const names = new Map<string, Text>([
    ...sheetNumbers.flatMap(({ number }) => {
      const name = numbers?.get(number)?.name;
      return name ? [[number, name] as const] : [];
    }),
    ...givens.map(({ id, name }) => [id, name] as const),
    ...parts.map(({ id, name }) => [id, name] as const),
  ]);
  return (name: string, language: keyof Text): string => `“${names.get(name)?.[language] ?? name}”`;
}
