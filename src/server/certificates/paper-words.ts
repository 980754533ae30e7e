import type { Language, Text } from '#engine/text.ts';

const words = {
  certificate: { en: 'Certificate', es: 'Certificado' },
  card: { en: 'Certificate card', es: 'Tarjeta de certificado' },
  for: { en: 'This is to say that', es: 'Se hace constar que' },
  passed: { en: 'passed the examinations of', es: 'aprobó los exámenes de' },
  covers: { en: 'Walls that it covers', es: 'Muros que abarca' },
  examined: { en: 'What was examined', es: 'Qué se examinó' },
  passedOn: { en: 'passed', es: 'aprobado' },
  governs: { en: 'What it does not say', es: 'Qué no dice' },
  holder: { en: 'Holder', es: 'Titular' },
  scheme: { en: 'Scheme', es: 'Esquema' },
  issuer: { en: 'Issued by', es: 'Otorgado por' },
  granted: { en: 'Granted', es: 'Otorgado' },
  until: { en: 'Holds until', es: 'Vale hasta' },
  issue: { en: 'Issue', es: 'Emisión' },
  sheet: { en: 'Sheet', es: 'Hoja' },
  verify: {
    en: 'Scan to read its state today: it may have been suspended, withdrawn or issued anew since this was printed.',
    es: 'Escanee para ver su estado de hoy: puede haberse suspendido, retirado o emitido de nuevo desde que se imprimió.',
  },
  scan: { en: 'Scan for its state today', es: 'Escanee para ver su estado de hoy' },
  cut: {
    en: 'Cut along the outer line, fold along the middle.',
    es: 'Recorte por la línea exterior y doble por la mitad.',
  },
  demo: {
    en: 'INVENTED COMPANY: THIS CERTIFIES NOBODY',
    es: 'EMPRESA INVENTADA: NO CERTIFICA A NADIE',
  },
} as const satisfies Readonly<Record<string, Text>>;

export type PaperWords = Readonly<Record<keyof typeof words, string>>;

export const paperWords = (language: Language): PaperWords =>
  Object.fromEntries(
    Object.entries(words).map(([name, text]) => [name, text[language]]),
  ) as unknown as PaperWords;

const locales = { en: 'en-US', es: 'es-MX' } as const;

/** `May 1, 2033`. */
export const dayOnPaper = (day: string, language: Language): string =>
  new Date(`${day}T00:00:00Z`).toLocaleDateString(locales[language], {
    dateStyle: 'long',
    timeZone: 'UTC',
  });
