import type { Language, Text } from '#engine/text.ts';
import { type Applied, cardOf } from './applied.ts';
import type { Part, View } from './drawing.ts';
import { type Mark } from './marks.ts';
import { measureText } from './measures.ts';
import { type Built, builtNames, layerNames, leftOutNote, wetNote, zoneNames } from './words.ts';
import type { Wall } from './wall.ts';

/** What the views show: letters for what was there, then numbers in the order of the cards. */
export function partsOf(
  wall: Wall,
  views: readonly View[],
  marks: readonly Mark[],
): readonly Part[] {
  const shown = new Set(views.flatMap(({ shapes }) => shapes.map(({ part }) => part)));
  const noted = new Set(views.flatMap(({ keynotes }) => keynotes.map(({ part }) => part)));
  const built = (Object.keys(builtNames) as readonly Built[]).filter((what) => shown.has(what));
  const work = groups([...wall.applied, ...wall.missing].toSorted((a, b) => a.at - b.at));
  return [
    ...built
      .toSorted((a, b) => Number(noted.has(b)) - Number(noted.has(a)))
      .map((what, index) => builtPart(what, letter(index))),
    ...work.map((layers, index) => workPart(wall, layers, `${index + 1}`)),
    ...marks.map((mark, index) => markPart(wall, mark, `${work.length + index + 1}`)),
  ];
}

const letter = (index: number): string => String.fromCharCode(65 + (index % 26));

const builtPart = (what: Built, mark: string): Part => ({
  id: what,
  mark,
  name: builtNames[what],
  notes: [],
  layer: undefined,
  zones: [],
  card: undefined,
  fault: undefined,
});

function groups(applied: readonly Applied[]): readonly (readonly Applied[])[] {
  const byPart = new Map<string, readonly Applied[]>();
  for (const one of applied) byPart.set(one.part, [...(byPart.get(one.part) ?? []), one]);
  return [...byPart.values()];
}

function workPart({ sequence }: Wall, layers: readonly Applied[], mark: string): Part {
  const first = layers[0]!;
  const zones = [...new Set(layers.map(({ zone }) => zone))];
  const { card, placed, fault } = first;
  const asks = sequence.steps.find(({ id }) => id === card)?.asks ?? [];
  const settings = [...(placed?.settings ?? [])].flatMap(([setting, value]): Text[] => {
    const ask = asks.find(({ id }) => id === setting);
    return ask ? [joined(ask.sheetNumber.name, measureText(value), ': ')] : [];
  });
  const dries = sequence.steps.find(({ id }) => id === card)?.dries;
  return {
    id: first.part,
    mark,
    name: joined(layerNames[first.layer], listed(zones.map((zone) => zoneNames[zone])), ', '),
    notes: [
      ...(placed ? [] : [leftOutNote]),
      ...(placed?.state === 'wet' && (dries || first.layer === 'primer') ? [wetNote] : []),
      ...settings,
    ],
    layer: first.layer,
    zones,
    card,
    fault,
  };
}

function markPart({ sequence, work }: Wall, { card, part, zones }: Mark, mark: string): Part {
  return {
    id: part,
    mark,
    name: cardOf(sequence, card)!.say,
    notes: [],
    layer: undefined,
    zones,
    card,
    fault: work.faults.find((fault) => fault.card === card)?.severity,
  };
}

const joined = (a: Text, b: Text, by: string): Text => ({
  en: [a.en, b.en].filter(Boolean).join(by),
  es: [a.es, b.es].filter(Boolean).join(by),
});

const and: Text = { en: ' and ', es: ' y ' };

const listed = (texts: readonly Text[]): Text => {
  const all = (language: Language): string => {
    const words = texts.map((text) => text[language]);
    const last = words.at(-1) ?? '';
    return words.length < 2 ? last : `${words.slice(0, -1).join(', ')}${and[language]}${last}`;
  };
  return { en: all('en'), es: all('es') };
};
