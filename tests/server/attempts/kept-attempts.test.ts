import { expect, test } from 'vitest';
import * as kept from '#server/attempts/kept-attempts.ts';
import { freshId } from '#server/fresh-id.ts';
import { plan } from '../plan.ts';
import { freshRecords } from '../records.ts';

// PostgreSQL chooses by what it counted in the tables; SQLite, without counts, by the indices alone.
test('the attempts of a person are not looked for among all that the company ever received', async () => {
  const { db, drop } = await freshRecords('sqlite');
  const query = kept.forWorksQuery(db, freshId(), { person: freshId(), works: [freshId()] });
  const way = await plan(db, 'sqlite', query.compile());
  expect(way).toContain('attempt USING INDEX attempt_of (person_id=? AND company_id=?)');
  expect(way).not.toMatch(/temp b-tree/i);
  await drop();
});
