import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { attention } from '#server/board/attention.ts';
import { schemesNow } from '#server/board/qualifications.ts';
import type { Scheme } from '#engine/exam/scheme.ts';
import { freshId } from '#server/fresh-id.ts';
import * as jobs from '#server/jobs/jobs.ts';
import type { Act } from '#server/people/member.ts';
import { added, at, freshCompany } from '../people/company.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { apply, certify, daysFrom } from './crewed.ts';

const scheme = 'base-of-wall-installer';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let act: Act;
  let schemes: readonly Scheme[];
  beforeAll(async () => {
    records = await freshRecords(kind);
    schemes = await schemesNow();
  });
  beforeEach(async () => {
    act = await freshCompany(records.db);
  });
  afterAll(() => records.drop());

  const waiting = () => attention(records.db, act.by.company, at, schemes);
  const holder = async (name: string, days: number, state = 'in-force') => {
    const person = await added(records.db, act, { name });
    await certify(records.db, act, { person, scheme, state, validUntil: daysFrom(days) });
    return person;
  };

  test('nothing waits in a company where nothing ends', async () => {
    await holder('Ana', 61);
    expect(await waiting()).toEqual([]);
  });

  test('the gravest comes first, and what ends in the order of its day', async () => {
    const { db } = records;
    const later = await holder('Later', 60);
    const soon = await holder('Soon', 30);
    const today = await holder('Today', 0);
    await holder('Lapsed', -1);
    await holder('Suspended', 400, 'suspended');
    await apply(db, act, later, 'crew-lead');
    const job = {
      title: 'East wall',
      place: 'Harrow Mill',
      startsOn: daysFrom(5),
      endsOn: daysFrom(45),
      note: '',
      roles: [{ title: 'Installers', count: 2, needs: [scheme] }],
      travel: [],
    };
    const ids = schemes.map(({ id }) => id as string);
    const id = freshId();
    await jobs.keep(db, act, ids, id, job);
    expect(await waiting()).toMatchObject([
      { kind: 'suspended', scheme, people: 1 },
      { kind: 'lapsed', scheme, people: 1 },
      { kind: 'ending', within: 0, person: today },
      { kind: 'ending', within: 30, person: soon },
      { kind: 'ending', within: 60, person: later },
      { kind: 'job', id, title: 'East wall', empty: 1 },
      { kind: 'applications', open: 1 },
    ]);
  });

  test('of many that end some are named, and the others counted', async () => {
    for (let one = 0; one < 10; one += 1) await holder(`Person ${one}`, 20 + one);
    const found = await waiting();
    expect(found).toHaveLength(9);
    expect(found.at(-1)).toEqual({ kind: 'more-ending', people: 2 });
  });

  test('work given that is past its day is counted for those who have not passed it', async () => {
    const { db } = records;
    const person = await added(db, act, { name: 'Late' });
    const id = freshId();
    await db
      .insertInto('assignment')
      .values({
        id,
        company_id: act.by.company,
        title: 'Corners',
        note: null,
        made_by: act.by.person,
        made_at: `${daysFrom(-9)}T08:00:00.000Z`,
        opens_at: `${daysFrom(-9)}T08:00:00.000Z`,
        due_at: `${daysFrom(-1)}T08:00:00.000Z`,
        tries: null,
        withdrawn_at: null,
      })
      .execute();
    await db
      .insertInto('assignment_work')
      .values({
        id: freshId(),
        assignment_id: id,
        place: 0,
        kind: 'mockup',
        subject: '{"method":"base-of-wall"}',
        pass: 90,
        count: 1,
      })
      .execute();
    await db
      .insertInto('assignment_for')
      .values({ assignment_id: id, crew_id: null, person_id: person })
      .execute();
    expect(await waiting()).toEqual([
      { kind: 'late', id, title: 'Corners', to: ['Late'], people: 1 },
    ]);
  });
});
