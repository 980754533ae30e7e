import type { Text } from '#engine/text.ts';

/** What a family of problems is about, in the order of the work. */
export const topics = [
  'membrane',
  'tape-and-corners',
  'bar-and-strap',
  'sealant',
  'primer',
  'drainage',
  'conditions',
  'time-and-cost',
  'whole-wall',
] as const;

export type Topic = (typeof topics)[number];

export const topicNames: Readonly<Record<Topic, Text>> = {
  membrane: { en: 'Sheets and rolls', es: 'Membrana y rollos' },
  'tape-and-corners': { en: 'Tape and corners', es: 'Cinta y esquinas' },
  'bar-and-strap': { en: 'Bar, strap and fasteners', es: 'Barra, fleje y fijadores' },
  sealant: { en: 'Sealant and mastic', es: 'Sellador y mastique' },
  primer: { en: 'Primer', es: 'Imprimador' },
  drainage: { en: 'Weeps, drip edge and end dams', es: 'Lloraderos, goterón y topes' },
  conditions: { en: 'Weather and storage', es: 'Clima y almacén' },
  'time-and-cost': { en: 'Time and cost', es: 'Tiempo y costo' },
  'whole-wall': { en: 'A whole wall', es: 'Un muro completo' },
};
