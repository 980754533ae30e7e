import type { Language, Text } from '#engine/text.ts';

const words = {
  title: { en: 'Take-off worksheet', es: 'Hoja de cálculo de materiales' },
  key: { en: 'Answer key', es: 'Respuestas' },
  name: { en: 'Name', es: 'Nombre' },
  date: { en: 'Date', es: 'Fecha' },
  sheet: { en: 'Sheet', es: 'Hoja' },
  problem: { en: 'No.', es: 'Núm.' },
  page: { en: 'Page', es: 'Página' },
  of: { en: 'of', es: 'de' },
  content: { en: 'content', es: 'contenido' },
  answer: { en: 'Answer:', es: 'Respuesta:' },
  slips: { en: 'Watch for:', es: 'Errores comunes:' },
  scale: { en: 'Not to scale', es: 'Sin escala' },
  governs: {
    en: 'For practice. The maker’s current instructions, the project documents and local codes govern.',
    es: 'Para practicar. Rigen las instrucciones vigentes del fabricante, los documentos del proyecto y los códigos locales.',
  },
  how: {
    en: 'Work in the free space. Write each answer with its unit.',
    es: 'Haga las cuentas en el espacio libre. Escriba cada respuesta con su unidad.',
  },
} as const satisfies Readonly<Record<string, Text>>;

export type Words = Readonly<Record<keyof typeof words, string>>;

export const wordsIn = (language: Language): Words =>
  Object.fromEntries(
    Object.entries(words).map(([name, text]) => [name, text[language]]),
  ) as unknown as Words;
