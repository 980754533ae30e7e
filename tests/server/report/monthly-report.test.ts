import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { languages, type Language } from '#engine/text.ts';
import type { Scheme } from '#engine/exam/scheme.ts';
import { columnsOf, schemesNow } from '#server/board/qualifications.ts';
import { freshId } from '#server/fresh-id.ts';
import * as jobs from '#server/jobs/jobs.ts';
import type { Act } from '#server/people/member.ts';
import { figures } from '#server/report/figures.ts';
import { monthFrom } from '#server/report/month.ts';
import { monthlyReportPdf } from '#server/report/monthly-report-pdf.ts';
import { certify, daysFrom, today } from '../board/crewed.ts';
import { added, at, freshCompany } from '../people/company.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { streamsOf, textOf } from '../worksheet/pdf-text.ts';

const base = 'base-of-wall-installer';
const textIn = (pdf: Buffer): string => streamsOf(pdf).map(textOf).join('\n').replace(/\s+/g, ' ');

describe('the month', () => {
  test.each([
    ['2030-02', '2030-02-01', '2030-02-28'],
    ['2028-02', '2028-02-01', '2028-02-29'],
    ['', '2030-05-01', '2030-05-31'],
    ['2030-13', '2030-05-01', '2030-05-31'],
    ['../etc', '2030-05-01', '2030-05-31'],
  ])('%s goes from %s through %s', (text, from, through) => {
    expect(monthFrom(text, today)).toEqual({ from, through });
  });
});

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let act: Act;
  let schemes: readonly Scheme[];
  beforeAll(async () => {
    records = await freshRecords(kind);
    act = await freshCompany(records.db);
    schemes = await schemesNow();
    const { db } = records;
    const person = await added(db, act, { name: 'Ana Oak' });
    const until = daysFrom(20);
    await certify(db, act, { person, scheme: base, grantedOn: '2030-05-01', validUntil: until });
    const other = await added(db, act, { name: 'Ben Elm' });
    await certify(db, act, { person: other, scheme: base, state: 'suspended', validUntil: until });
    await db
      .insertInto('attempt')
      .values(
        ['2030-04-30T23:59:59.999Z', '2030-05-01T00:00:00.000Z', '2030-05-31T23:59:59.999Z'].map(
          (received) => ({
            id: freshId(),
            company_id: act.by.company,
            person_id: person,
            work_id: null,
            kind: 'mockup',
            about: 'base-of-wall',
            played: '{}',
            finished_at: received,
            received_at: received,
            content_revision: 'r',
            sheet_revision: null,
          }),
        ),
      )
      .execute();
    const job = {
      title: 'East wall',
      place: 'Harrow Mill',
      startsOn: daysFrom(5),
      endsOn: daysFrom(9),
      note: '',
      roles: [{ title: 'Installers', count: 3, needs: [base] }],
      travel: [],
    };
    const ids = schemes.map(({ id }) => id as string);
    await jobs.keep(db, act, ids, freshId(), job);
  });
  afterAll(() => records.drop());

  const found = () => figures(records.db, act.by.company, at, schemes, monthFrom('2030-05', today));
  const pdf = async (language: Language) =>
    monthlyReportPdf(
      { companyName: 'Test company', columns: columnsOf(schemes), figures: await found() },
      language,
    );

  test('counts what was in the month, its first and last moment included', async () => {
    const { practice, practised, granted, people } = await found();
    expect(practice).toHaveLength(31);
    expect([practice[0], practice[30]]).toEqual([1, 1]);
    expect(practice.reduce((sum, count) => sum + count, 0)).toBe(2);
    expect({ practised, people, granted: granted.get(base) }).toEqual({
      practised: 1,
      people: 3,
      granted: 1,
    });
  });

  test.each(languages)(
    'says in %s who holds what, what ends, and which job is short',
    async (one) => {
      const text = textIn(await pdf(one));
      for (const { title } of schemes) expect(text).toContain(title[one]);
      expect(text).toContain('Ana Oak');
      expect(text).toContain({ en: 'Monthly report', es: 'Informe mensual' }[one]);
      expect(text).toContain({ en: '2 attempts, 1 people', es: '2 intentos, 1 personas' }[one]);
      expect(text).toContain(
        { en: 'East wall · 2 places empty', es: 'East wall · 2 puestos' }[one],
      );
      expect(text).not.toContain('Ben Elm');
      expect(text).not.toContain('?');
    },
  );

  test('is a PDF on letter paper with its charts drawn, the same to the last byte', async () => {
    const bytes = await pdf('en');
    const raw = bytes.toString('latin1');
    expect(raw.startsWith('%PDF-1.')).toBe(true);
    expect(raw).toContain('/MediaBox [0 0 612 792]');
    // A bar for each day with attempts, and a heavy line for each qualification's year.
    const drawn = streamsOf(bytes).join('\n');
    expect(drawn.match(/ re$/gm)).toHaveLength(2);
    expect(drawn.match(/^2 w$/gm)).toHaveLength(schemes.length);
    expect((await pdf('en')).equals(bytes)).toBe(true);
  });
});
