import type { Language } from '#engine/text.ts';
import { csv } from './csv.ts';
import type { JobSheet } from './job-sheet.ts';

const words = {
  en: {
    head: ['', 'Take-off', 'Item', 'Amount', 'Before rounding', 'Working'],
    job: 'Job',
    entered: 'Entered',
    sheet: 'Data sheet',
    needed: 'Needed',
  },
  es: {
    head: ['', 'Cálculo', 'Concepto', 'Cantidad', 'Antes de redondear', 'Desarrollo'],
    job: 'Obra',
    entered: 'Anotado',
    sheet: 'Hoja técnica',
    needed: 'Se necesita',
  },
} as const;

/** A job in one table: what was entered, what the data sheet says, what it takes, with the working. */
export function jobCsv(name: string, sheets: readonly JobSheet[], language: Language): string {
  const { head, job, entered, sheet, needed } = words[language];
  const rows = sheets.flatMap(({ problem, lines }) => {
    const title = problem.title[language];
    const stated = (kind: string, list: typeof problem.givens | typeof problem.numbers) =>
      list.map(({ name, value }) => [kind, title, name[language], value[language], '', '']);
    return [
      ...stated(entered, problem.givens),
      ...stated(sheet, problem.numbers),
      ...lines.map(({ name, amount, exact, working }) => [
        needed,
        title,
        name[language],
        amount[language],
        exact?.[language] ?? '',
        working
          .filter(({ kind }) => kind !== 'why' && kind !== 'answer')
          .map(({ text }) => text[language])
          .join(' ; '),
      ]),
    ];
  });
  return csv([head, ...(name === '' ? [] : [[job, '', name, '', '', '']]), ...rows]);
}
