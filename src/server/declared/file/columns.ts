/** The columns of a file of certificates that others issued. */
import { headed, type Headings } from '../../import/headings.ts';
import type { GivenDeclared } from '../declared-form.ts';

/** By which somebody is known; `account` is a user name or an email address. */
export const whoColumns = ['person', 'personNumber', 'account'] as const;
export type WhoColumn = (typeof whoColumns)[number];

export type Column = WhoColumn | keyof GivenDeclared;

// A bare "number" is not read: it may be the person's as well as the certificate's.
const headings: Headings<Column> = {
  person: { en: ['person', 'name', 'full name'], es: ['persona', 'nombre', 'nombre completo'] },
  personNumber: {
    en: ['person number', 'badge', 'badge number'],
    es: ['número de persona', 'gafete', 'número de gafete'],
  },
  account: {
    en: ['user name or email', 'user name', 'username', 'email', 'e-mail'],
    es: ['usuario o correo', 'usuario', 'nombre de usuario', 'correo', 'correo electrónico'],
  },
  title: { en: ['certificate', 'what it is for'], es: ['certificado', 'para qué es'] },
  issuer: { en: ['issuer', 'issued by'], es: ['emisor', 'emitido por'] },
  number: {
    en: ['certificate number', 'certificate no', 'certificate no.'],
    es: ['número del certificado', 'número de certificado', 'n.º del certificado'],
  },
  scheme: {
    en: ['nearest qualification', 'qualification'],
    es: ['certificación más cercana', 'certificación', 'calificación más cercana', 'calificación'],
  },
  issuedOn: {
    en: ['issued on', 'date of issue', 'issue date'],
    es: ['emitido el', 'fecha de emisión'],
  },
  validUntil: {
    en: ['last day', 'valid until', 'expires'],
    es: ['último día', 'válido hasta', 'vence'],
  },
};

export const columns = Object.keys(headings) as readonly Column[];
export const declaredColumns = headed(headings);
