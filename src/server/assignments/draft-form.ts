/** A form in which work is put together, as the draft it stands for: nothing in it is believed yet. */
import { textOf } from '../access/text-of.ts';
import type { Draft, Piece } from './draft.ts';

/** As it was entered, to be shown again: days as they stand in the calendar of whoever enters them. */
export type Entered = Omit<Draft, 'persons' | 'opens' | 'due'> & {
  readonly opensDay: string;
  readonly dueDay: string;
  readonly persons: readonly { readonly id: string; readonly name: string }[];
};

export const blank: Entered = {
  title: '',
  note: '',
  opensDay: '',
  dueDay: '',
  tries: '',
  pass: '90',
  pieces: [],
  crews: [],
  persons: [],
};

const textsOf = (form: FormData, name: string): readonly string[] =>
  form.getAll(name).filter((value) => typeof value === 'string');

export const enteredFrom = (form: FormData): Entered => ({
  title: textOf(form, 'title'),
  note: textOf(form, 'note'),
  opensDay: textOf(form, 'opens'),
  dueDay: textOf(form, 'due'),
  tries: textOf(form, 'tries'),
  pass: textOf(form, 'pass'),
  pieces: textsOf(form, 'piece').flatMap((text) => pieceFrom(text) ?? []),
  crews: textsOf(form, 'crew'),
  persons: textsOf(form, 'person').map((id) => ({ id, name: textOf(form, `name/${id}`) })),
});

/**
 * A day is over at midnight where whoever gives the work is: their browser says when that is. Without a
 * word from it, the day of UTC counts.
 */
export const datesOf = (form: FormData): Pick<Draft, 'opens' | 'due' | 'tries'> => ({
  opens: instantOf(form, 'opens', 'T00:00:00.000Z'),
  due: instantOf(form, 'due', 'T23:59:59.999Z'),
  tries: textOf(form, 'tries'),
});

function instantOf(form: FormData, name: string, time: string): string {
  const day = textOf(form, name);
  return day === '' ? '' : textOf(form, `${name}-at`) || day + time;
}

export const draftFrom = (form: FormData): Draft => {
  const { opensDay: _opens, dueDay: _due, persons, ...rest } = enteredFrom(form);
  return { ...rest, ...datesOf(form), persons: persons.map(({ id }) => id) };
};

function pieceFrom(text: string): Piece | undefined {
  try {
    const { kind, method, site, family, topic, questions, pass, count } = JSON.parse(
      text,
    ) as Record<string, unknown>;
    if (kind === 'takeoff' && typeof family === 'string' && typeof count === 'number') {
      return { kind, family, count };
    }
    if (kind === 'written' && typeof topic === 'string' && typeof questions === 'number') {
      return { kind, topic, questions, count: 1, ...(typeof pass === 'number' ? { pass } : {}) };
    }
    if (kind !== 'mockup' || typeof method !== 'string') return undefined;
    if (site === undefined) return { kind, method, count: 1 };
    const answers = Object.entries(site as object);
    return answers.every(([, value]) => typeof value === 'string')
      ? { kind, method, site: Object.fromEntries(answers), count: 1 }
      : undefined;
  } catch {
    return undefined;
  }
}

/** The draft with what the pressed button adds: a wall, any wall, problems of a family, questions of a topic, somebody. */
export function added(form: FormData): Entered {
  const entered = enteredFrom(form);
  const [, what = '', id = ''] =
    /^(any|wall|takeoff|written|person)\/(.+)$/.exec(textOf(form, 'add')) ?? [];
  const { pieces, persons } = entered;
  if (what === 'person') {
    const others = persons.filter((person) => person.id !== id);
    return { ...entered, persons: [...others, { id, name: textOf(form, `found/${id}`) }] };
  }
  const piece = pieceOf(form, what, id);
  return piece ? { ...entered, pieces: [...pieces, piece] } : entered;
}

function pieceOf(form: FormData, what: string, id: string): Piece | undefined {
  if (what === 'any') return { kind: 'mockup', method: id, count: 1 };
  if (what === 'takeoff') {
    const family = textOf(form, 'family');
    return { kind: 'takeoff', family, count: Number(textOf(form, 'right')) };
  }
  if (what === 'written') {
    const [questions, pass] = [Number(textOf(form, 'questions')), Number(textOf(form, 'right-of'))];
    return { kind: 'written', topic: textOf(form, 'topic'), questions, pass, count: 1 };
  }
  if (what !== 'wall') return undefined;
  const beginning = `site/${id}/`;
  const names = [...form.keys()].filter((name) => name.startsWith(beginning));
  const site = Object.fromEntries(
    names.map((name) => [name.slice(beginning.length), textOf(form, name)]),
  );
  return { kind: 'mockup', method: id, site, count: 1 };
}

/** The draft without what the pressed button takes out. */
export function without(form: FormData): Entered {
  const entered = enteredFrom(form);
  const [, what = '', id = ''] = /^(piece|person)\/(.+)$/.exec(textOf(form, 'out')) ?? [];
  if (what === 'person') {
    return { ...entered, persons: entered.persons.filter((person) => person.id !== id) };
  }
  return { ...entered, pieces: entered.pieces.filter((_, place) => String(place) !== id) };
}
