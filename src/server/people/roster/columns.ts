/** The columns of a roster, by the names that offices write over them in either language. */
import type { Language } from '#engine/text.ts';
import { type Role, roles } from '../../access/roles.ts';
import { headed, type Headings } from '../../import/headings.ts';
import { folded } from '../folded.ts';

export const columns = ['name', 'number', 'crew', 'roles', 'language', 'email'] as const;
export type Column = (typeof columns)[number];

const headings: Headings<Column> = {
  name: { en: ['name', 'full name', 'person'], es: ['nombre', 'nombre completo', 'persona'] },
  number: {
    en: ['number', 'no', 'no.', 'badge', 'badge number'],
    es: ['número', 'n.º', 'nº', 'num', 'núm.', 'gafete'],
  },
  crew: { en: ['crew'], es: ['cuadrilla'] },
  roles: { en: ['roles', 'role'], es: ['funciones', 'función', 'rol'] },
  language: { en: ['language'], es: ['idioma', 'lengua'] },
  email: {
    en: ['email', 'e-mail', 'mail'],
    es: ['correo', 'correo electrónico', 'email'],
  },
};

export const rosterColumns = headed(headings);

const roleWords: Readonly<Record<Role, readonly string[]>> = {
  apprentice: ['apprentice', 'aprendiz'],
  trainer: ['trainer', 'instructor', 'instructora'],
  examiner: ['examiner', 'examinador', 'examinadora'],
  office: ['office', 'oficina'],
};

/** The roles in a cell, in either language with anything between; the first word that is none. */
export function rolesIn(cell: string): readonly Role[] | { readonly unknown: string } {
  const words = cell.split(/[\s,;/+|&]+/).filter(Boolean);
  const held: Role[] = [];
  for (const word of words) {
    const role = roles.find((known) => roleWords[known].includes(folded(word)));
    if (!role) return { unknown: word };
    held.push(role);
  }
  return roles.filter((role) => held.includes(role));
}

const languageWords: Readonly<Record<Language, readonly string[]>> = {
  en: ['en', 'english', 'ingles'],
  es: ['es', 'spanish', 'espanol', 'castellano'],
};

export const languageIn = (cell: string): Language | undefined =>
  (['en', 'es'] as const).find((language) => languageWords[language].includes(folded(cell)));

export const roleHeading = (role: Role, language: Language): string =>
  roleWords[role][language === 'en' ? 0 : 1]!;
