import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decoded, mostBytes, unmisread } from '#server/import/decode.ts';
import { asWritten, harmless } from '#server/import/harmless.ts';
import { mostRows } from '#server/import/read-table.ts';
import { rowsFrom } from '#server/people/roster/read-rows.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const latin = (text: string): Uint8Array => Uint8Array.from(Buffer.from(text, 'latin1'));

const givenIn = (text: string) => {
  const read = rowsFrom(text);
  if (!read.ok) throw new Error(read.error.code);
  return read.value.rows.map(({ given }) => given);
};
const faultsIn = (text: string) => {
  const read = rowsFrom(text);
  if (!read.ok) throw new Error(read.error.code);
  return read.value.rows.flatMap(({ row, faults }) => faults.map((fault) => ({ row, ...fault })));
};
const codeOf = (text: string) => {
  const read = rowsFrom(text);
  return read.ok ? 'READ' : read.error;
};

const ana = {
  name: 'Ana López',
  number: '17',
  crew: 'North',
  roles: ['apprentice', 'trainer'],
  language: 'es',
  email: 'ana@site.example',
};

describe('truth', () => {
  test.each([
    [
      'English headings with commas',
      'name,number,crew,roles,language,email\nAna López,17,North,"trainer, apprentice",Spanish,ana@site.example\n',
    ],
    [
      'Spanish headings with semicolons, in another order, after a mark of byte order',
      '\uFEFFCuadrilla;Nombre;Funciones;Correo electrónico;NÚMERO;Idioma\r\nNorth;Ana López;aprendiz, instructora;ana@site.example;17;español\r\n',
    ],
    [
      'tabs',
      'Crew\tName\tRole\tE-mail\tNo.\tLanguage\nNorth\tAna López\ttrainer/apprentice\tana@site.example\t17\tes',
    ],
    [
      'a first line that names the separator',
      'sep=;\r\nname;number;crew;roles;language;email\r\nAna López;17;North;apprentice+trainer;ES;ana@site.example',
    ],
  ])('%s read the same', (_, text) => {
    expect(givenIn(text)).toEqual([ana]);
  });

  test('a name with the separator in it is read within quotes', () => {
    expect(givenIn('name,crew\n"López, Ana",North')).toEqual([
      { name: 'López, Ana', crew: 'North' },
    ]);
  });

  test('columns that mean nothing here are told and not read', () => {
    const read = rowsFrom('name,shoe size\nAna,42');
    expect(read).toMatchObject({ value: { ignored: ['shoe size'], rows: [{ faults: [] }] } });
  });

  test('every fault of a row is told by its row, as a spreadsheet counts, and its column', () => {
    const text = [
      'name,number,crew,roles,language,email',
      'Ana,17,North,apprentice,en,',
      ',,,,,',
      ',1;2,<x>,"trainer, boss",french,ana@',
      'Eva,,,,,,more',
    ].join('\n');
    expect(faultsIn(text)).toEqual([
      { row: 4, column: 'name', code: 'MISSING' },
      { row: 4, column: 'number', code: 'WRONG', text: '1;2' },
      { row: 4, column: 'crew', code: 'WRONG', text: '<x>' },
      { row: 4, column: 'roles', code: 'ROLE_UNKNOWN', text: 'boss' },
      { row: 4, column: 'language', code: 'WRONG', text: 'french' },
      { row: 4, column: 'email', code: 'WRONG', text: 'ana@' },
      { row: 5, column: null, code: 'TOO_MANY_CELLS', text: 'more' },
    ]);
  });

  test('a file that cannot be read says why', () => {
    expect(codeOf('  \n')).toEqual({ code: 'EMPTY' });
    expect(codeOf('name\n')).toEqual({ code: 'EMPTY' });
    expect(codeOf('first,last\nAna,López')).toEqual({
      code: 'COLUMN_MISSING',
      column: 'name',
      found: ['first', 'last'],
    });
    expect(codeOf('name,nombre\nAna,Ana')).toEqual({ code: 'COLUMN_TWICE', column: 'name' });
    expect(codeOf('name\n"Ana\nEva')).toEqual({ code: 'QUOTE_OPEN', row: 2 });
    const rows = 'Ana\n'.repeat(mostRows + 1);
    expect(codeOf(`name\n${rows}`)).toEqual({ code: 'TOO_MANY_ROWS', most: mostRows });
  });

  test('a file of Windows-1252 is told with the line, and how the line was meant', () => {
    expect(decoded(latin('name\nEva\nAna L\xf3pez\n'))).toEqual({
      ok: false,
      error: { code: 'NOT_UTF8', line: 3, reads: 'Ana López' },
    });
  });

  test('UTF-8 and what spreadsheets call Unicode are read; workbooks and large files are told', () => {
    expect(decoded(bytes('\uFEFFname'))).toEqual({ ok: true, value: 'name' });
    const wide = Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from('name\tñ', 'utf16le')]);
    expect(decoded(wide)).toEqual({ ok: true, value: 'name\tñ' });
    expect(decoded(latin('PK\x03\x04...'))).toMatchObject({ error: { code: 'WORKBOOK' } });
    expect(decoded(new Uint8Array(mostBytes + 1))).toMatchObject({ error: { code: 'TOO_LARGE' } });
  });

  test('a cell that some program has misread is a fault, with what was meant', () => {
    expect(faultsIn('name\nAna LÃ³pez')).toEqual([
      { row: 2, column: 'name', code: 'MISREAD', text: 'Ana LÃ³pez', meant: 'Ana López' },
    ]);
    expect(unmisread('JosÃ© O’Neil')).toBeUndefined();
    expect(unmisread('Oâ€™Neil')).toBe('O’Neil');
    expect(unmisread('João Ção Ñandú')).toBeUndefined();
  });

  test.each(['=1+1', '+1', '-5', '@sum', '\tx', '\rx'])('%j is made harmless', (cell) => {
    expect(harmless(cell)).toBe(`'${cell}`);
  });
});

describe('laws', () => {
  test('what was made harmless is read as it was, and begins like no formula', () => {
    const cell = fc.string({
      unit: fc.constantFrom("'", '=', '+', '-', '@', '\t', '\r', 'a', ' '),
    });
    fc.assert(
      fc.property(cell, (text) => {
        expect(asWritten(harmless(text))).toBe(text);
        expect(harmless(text)).not.toMatch(/^[=+\-@\t\r]/);
      }),
    );
  });

  test('what UTF-8 became by being taken for Windows-1252 is found out', () => {
    const accented = fc.constantFrom('ñ', 'á', 'é', 'í', 'ó', 'ú', 'ü', 'Ñ');
    fc.assert(
      fc.property(fc.array(accented, { minLength: 1 }), (signs) => {
        const name = `Ana ${signs.join('x')}`;
        const misread = new TextDecoder('windows-1252').decode(bytes(name));
        expect(unmisread(misread)).toBe(name);
        expect(unmisread(name)).toBeUndefined();
      }),
    );
  });
});
