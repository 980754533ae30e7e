import type { QualificationState } from '#engine/competence/qualification-state.ts';
import type { Language, Text } from '#engine/text.ts';

const words = {
  title: { en: 'Monthly report', es: 'Informe mensual' },
  month: { en: 'Month', es: 'Mes' },
  asOf: { en: 'States as of', es: 'Estados al' },
  people: { en: 'With the company', es: 'En la empresa' },
  states: { en: 'Who holds what', es: 'Quién tiene qué' },
  qualification: { en: 'Qualification', es: 'Certificación' },
  granted: { en: 'Granted in the month', es: 'Otorgados en el mes' },
  practice: {
    en: 'Practice in the month, attempts a day',
    es: 'Práctica del mes, intentos por día',
  },
  practised: { en: 'people practised', es: 'personas practicaron' },
  attempts: { en: 'attempts', es: 'intentos' },
  coverage: {
    en: 'Coverage of the next 12 months, if nobody renews',
    es: 'Cobertura de los próximos 12 meses, si nadie renueva',
  },
  ending: { en: 'Ends within 60 days', es: 'Vence en 60 días' },
  noEnding: { en: 'Nothing ends within 60 days.', es: 'Nada vence en 60 días.' },
  jobs: { en: 'Jobs that cannot be filled', es: 'Trabajos que no se pueden cubrir' },
  noJobs: {
    en: 'Every job that is written down can be filled.',
    es: 'Todos los trabajos anotados se pueden cubrir.',
  },
  empty: { en: 'places empty', es: 'puestos vacíos' },
  page: { en: 'Page', es: 'Página' },
  of: { en: 'of', es: 'de' },
  governs: {
    en: 'From the company’s records. Certificates, the site and licensed practice say which work somebody may do.',
    es: 'De los registros de la empresa. Los certificados, la obra y la práctica profesional dicen qué trabajo puede hacer alguien.',
  },
} as const satisfies Readonly<Record<string, Text>>;

export type ReportWords = Readonly<Record<keyof typeof words, string>>;

export const reportWords = (language: Language): ReportWords =>
  Object.fromEntries(
    Object.entries(words).map(([name, text]) => [name, text[language]]),
  ) as unknown as ReportWords;

export const stateNames: Readonly<Record<QualificationState, Text>> = {
  none: { en: 'None', es: 'Ninguna' },
  'in-training': { en: 'In training', es: 'En capacitación' },
  current: { en: 'Current', es: 'Vigente' },
  due: { en: 'Due', es: 'Por renovar' },
  lapsed: { en: 'Lapsed', es: 'Vencida' },
  suspended: { en: 'Suspended', es: 'Suspendida' },
  withdrawn: { en: 'Withdrawn', es: 'Retirada' },
};

const locales: Readonly<Record<Language, string>> = { en: 'en-US', es: 'es-MX' };

export const dayIn = (language: Language, day: string): string =>
  new Date(`${day}T00:00:00Z`).toLocaleDateString(locales[language], {
    dateStyle: 'medium',
    timeZone: 'UTC',
  });

export const monthIn = (language: Language, day: string): string =>
  new Date(`${day}T00:00:00Z`).toLocaleDateString(locales[language], {
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  });
