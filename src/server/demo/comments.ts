/** What the trainers of the invented company said of some attempts. */
import type { Language } from '#engine/text.ts';

/** An attempt of somebody, as it was marked. */
export type Remarkable = {
  readonly attempt: string;
  readonly outcome: string;
  readonly at: string;
  readonly crew: string | null;
  readonly language: Language;
};

type Words = { readonly well: string; readonly ill: readonly string[] };

const words: Readonly<Record<Language, Words>> = {
  en: {
    well: 'Nothing to mend. Show this one to whoever starts next.',
    ill: [
      'Look at the order again: what stands behind has to be done first.',
      'Come and see me with the data sheet before you try once more.',
      'The numbers are close. Read the tolerance, then measure twice.',
    ],
  },
  es: {
    well: 'No hay nada que corregir. Muéstresela a quien empiece después.',
    ill: [
      'Revise el orden: lo que queda detrás se hace primero.',
      'Venga a verme con la hoja técnica antes de intentarlo otra vez.',
      'Las medidas están cerca. Lea la tolerancia y mida dos veces.',
    ],
  },
};

const hour = 60 * 60 * 1000;
/** One in so many is spoken of. */
const each = 29;

type Comment = Remarkable & { readonly reason: string; readonly said: string };

/** A few, the earliest first; the same for the same attempts. */
export function commentsOn(all: readonly Remarkable[]): readonly Comment[] {
  const walls = all
    .filter(({ outcome }) => ['accept', 'rework', 'tear-out'].includes(outcome))
    .toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  return walls
    .filter((_, place) => place % each === each - 1)
    .map((one, place) => {
      const { well, ill } = words[one.language];
      return {
        ...one,
        reason: one.outcome === 'accept' ? well : ill[place % ill.length]!,
        said: new Date(Date.parse(one.at) + 3 * hour).toISOString(),
      };
    });
}
