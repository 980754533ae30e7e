import Papa from 'papaparse';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { boardCsv } from '#server/board/board-csv.ts';
import { schemesNow } from '#server/board/qualifications.ts';
import type { Act } from '#server/people/member.ts';
import { added, at, freshCompany } from '../people/company.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { certify, daysFrom, practise } from './crewed.ts';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let act: Act;
  beforeAll(async () => {
    records = await freshRecords(kind);
    act = await freshCompany(records.db);
  });
  afterAll(() => records.drop());

  test('a row a person, a state and a last day for each qualification; nothing is a formula', async () => {
    const { db } = records;
    const person = await added(db, act, { name: 'Ana Oak', number: '7' });
    await db.updateTable('person').set({ name: '=1+1' }).where('id', '=', person).execute();
    await certify(db, act, {
      person,
      scheme: 'base-of-wall-installer',
      validUntil: daysFrom(900),
    });
    await practise(db, act, person, 'base-of-wall', daysFrom(-3));
    const schemes = await schemesNow();
    const asked = { order: 'name' as const };
    const text = await boardCsv(db, act.by.company, at, schemes, asked, 'es');
    const [head, first, second, ...none] = Papa.parse<string[]>(text.trimEnd()).data;
    expect(head!.slice(0, 4)).toEqual([
      'nombre',
      'número',
      'cuadrilla',
      'Instalador de base del muro',
    ]);
    expect(head).toHaveLength(3 + 3 * schemes.length);
    expect(first!.slice(0, 6)).toEqual([`'=1+1`, '7', '', 'current', daysFrom(900), daysFrom(-3)]);
    expect(second![0]).toBe('Office');
    expect(none).toEqual([]);
  });
});
