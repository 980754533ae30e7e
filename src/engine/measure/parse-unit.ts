import { ok } from '#engine/result.ts';
import type { Result } from '#engine/result.ts';
import { measureFault } from './fault.ts';
import type { MeasureFault } from './fault.ts';
import { longestText } from './parse-quantity.ts';
import type { Unit } from './unit.ts';
import { readUnit, unknownUnit } from './unit-text.ts';
import { units } from './units.ts';
import { skipSpaces, written } from './written.ts';

/** The unit that the text means: `in`, `ft2/gal`, `$ per ft`. `1` is the unit of a plain number. */
export const parseUnit = (text: string): Result<Unit, MeasureFault> => {
  const source = written(text);
  if (text.length > longestText) {
    const message = {
      en: `A unit is written in at most ${longestText} characters. Shorten it.`,
      es: `Una unidad se escribe en ${longestText} caracteres a lo más. Acórtela.`,
    };
    return measureFault('TOO_LONG', { at: longestText, end: text.length }, message);
  }
  if (text.trim() === '') {
    const message = {
      en: 'Nothing is written here. Write a unit such as in, or 1 for a plain number.',
      es: 'No hay nada escrito. Escriba una unidad como pulg, o 1 para un número sin unidad.',
    };
    return measureFault('EMPTY', { at: 0, end: text.length }, message);
  }
  if (text.trim() === '1') return ok(units['1']);
  const read = readUnit(source, 0);
  if (!read.ok) return read;
  const end = skipSpaces(source.plain, read.value?.end ?? 0);
  return read.value !== undefined && end === text.length
    ? ok(read.value.unit)
    : unknownUnit(source, end, undefined);
};
