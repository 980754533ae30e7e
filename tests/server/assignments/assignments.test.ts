import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import * as assignments from '#server/assignments/assignments.ts';
import { list, one } from '#server/assignments/assignment-list.ts';
import type { Draft } from '#server/assignments/draft.ts';
import { verify } from '#server/audit/audit-trail.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Act } from '#server/people/member.ts';
import { at, freshCompany, freshMember } from '../attempts/company.ts';
import { content } from '../attempts/kept.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { anyWall, draft, freshCrew, later, method } from './given.ts';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let act: Act;
  let crew: string;
  beforeAll(async () => {
    records = await freshRecords(kind);
  });
  afterAll(() => records.drop());
  beforeEach(async () => {
    const { company } = await freshCompany(records.db);
    act = { by: await freshMember(records.db, company, { roles: ['trainer'] }), at };
    crew = await freshCrew(records.db, company);
  });

  const give = async (changes: Partial<Draft> = {}, by = act) => {
    const made = await assignments.compose(
      records.db,
      by,
      content,
      draft({ crews: [crew], ...changes }),
    );
    if (!made.ok) throw new Error(JSON.stringify(made.error));
    return made.value;
  };
  const actions = async () =>
    (
      await records.db
        .selectFrom('audit_entry')
        .select(['action', 'subject'])
        .where('company_id', '=', act.by.company)
        .orderBy('place')
        .execute()
    ).map(({ action, subject }) => `${action} ${subject}`);

  test('what was given reads back as it was entered', async () => {
    const person = await freshMember(records.db, act.by.company, { name: 'Ana' });
    const family = [...content.takeoffs.keys()][0]!;
    const question = content.methods.get(method as never)!.site[0]!;
    const site = { [question.id]: question.values[0]!.id };
    const id = await give({
      title: '  Base   of wall ',
      note: 'First line\r\nsecond',
      tries: '4',
      pass: '85',
      persons: [person.person],
      pieces: [anyWall, { ...anyWall, site }, { kind: 'takeoff', family, count: 5 }],
    });
    expect(await one(records.db, act.by.company, id)).toMatchObject({
      title: 'Base of wall',
      note: 'First line\nsecond',
      opens: at,
      due: later(7),
      tries: 4,
      withdrawn: null,
      crews: [{ id: crew, name: 'North' }],
      persons: [{ id: person.person, name: 'Ana' }],
      works: [
        { subject: { kind: 'mockup', method }, pass: 85, count: 1 },
        { subject: { kind: 'mockup', method, site }, pass: 85, count: 1 },
        { subject: { kind: 'takeoff', family }, pass: 100, count: 5 },
      ],
    });
    expect(await actions()).toContain(`assign ${id}`);
    expect((await verify(records.db, act.by.company)).faults).toEqual([]);
  });

  test.each<[string, Partial<Draft>, object]>([
    ['no title', { title: '  ' }, { field: 'title', code: 'EMPTY' }],
    ['too long a title', { title: 'x'.repeat(121) }, { field: 'title', code: 'TOO_LONG' }],
    ['too long a note', { note: 'x'.repeat(2001) }, { field: 'note', code: 'TOO_LONG' }],
    ['a due date that is none', { due: '2030-02-31' }, { field: 'due', code: 'WRONG' }],
    ['due before it opens', { opens: later(2), due: later(1) }, { field: 'due', code: 'BEFORE' }],
    ['no tries', { tries: '0' }, { field: 'tries', code: 'WRONG' }],
    ['half a try', { tries: '1.5' }, { field: 'tries', code: 'WRONG' }],
    ['more points than there are', { pass: '101' }, { field: 'pass', code: 'WRONG' }],
    ['no work', { pieces: [] }, { field: 'pieces', code: 'EMPTY' }],
    [
      'too much work',
      { pieces: Array.from({ length: 13 }, () => anyWall) },
      { field: 'pieces', code: 'TOO_MANY' },
    ],
    [
      'an unknown method',
      { pieces: [anyWall, { ...anyWall, method: 'none' }] },
      { field: 'pieces', code: 'UNKNOWN', place: 1 },
    ],
    [
      'an unknown wall',
      { pieces: [{ ...anyWall, site: { moon: 'full' } }] },
      { field: 'pieces', code: 'UNKNOWN', place: 0 },
    ],
    [
      'an unknown family',
      { pieces: [{ kind: 'takeoff', family: 'none', count: 1 }] },
      { field: 'pieces', code: 'UNKNOWN', place: 0 },
    ],
    ['nobody', { crews: [] }, { field: 'crews', code: 'EMPTY' }],
    ['a crew that is not there', { crews: [freshId()] }, { field: 'crews', code: 'UNKNOWN' }],
    ['somebody unknown', { persons: [freshId()] }, { field: 'persons', code: 'UNKNOWN' }],
  ])('%s is refused by its field, and nothing is kept', async (_, changes, fault) => {
    const given = draft({ crews: [crew], ...changes });
    expect(await assignments.compose(records.db, act, content, given)).toEqual({
      ok: false,
      error: [fault],
    });
    const { assignments: kept } = await list(records.db, act.by.company, { when: 'current', at });
    expect(kept).toEqual([]);
  });

  test('every fault is told at once', async () => {
    const given = draft({ title: '', tries: 'x', pieces: [], crews: [] });
    const made = await assignments.compose(records.db, act, content, given);
    expect(!made.ok && made.error.map(({ field }) => field)).toEqual([
      'title',
      'tries',
      'pieces',
      'crews',
    ]);
  });

  test('a crew of another company is not there', async () => {
    const other = await freshCompany(records.db);
    const foreign = await freshCrew(records.db, other.company);
    const given = draft({ crews: [foreign] });
    expect(await assignments.compose(records.db, act, content, given)).toMatchObject({
      error: [{ field: 'crews', code: 'UNKNOWN' }],
    });
  });

  test('dates are moved, and what is withdrawn is not moved any more', async () => {
    const id = await give();
    const dates = { opens: later(1), due: later(9), tries: '2' };
    expect(await assignments.changeDates(records.db, act, id, dates)).toMatchObject({ ok: true });
    expect(await one(records.db, act.by.company, id)).toMatchObject({
      opens: later(1),
      due: later(9),
      tries: 2,
    });
    const wrong = { ...dates, due: later(0) };
    expect(await assignments.changeDates(records.db, act, id, wrong)).toMatchObject({
      error: [{ field: 'due', code: 'BEFORE' }],
    });
    expect(await assignments.withdraw(records.db, act, id)).toMatchObject({ ok: true });
    expect(await assignments.withdraw(records.db, act, id)).toEqual({ ok: false, error: 'ABSENT' });
    expect(await assignments.changeDates(records.db, act, id, dates)).toEqual({
      ok: false,
      error: 'ABSENT',
    });
    expect((await actions()).slice(-3)).toEqual([
      `assign ${id}`,
      `change assignment dates ${id}`,
      `withdraw assignment ${id}`,
    ]);
  });

  test('nobody of another company reads, moves or withdraws it', async () => {
    const id = await give();
    const { company } = await freshCompany(records.db);
    const stranger = { by: await freshMember(records.db, company, { roles: ['trainer'] }), at };
    expect(await one(records.db, company, id)).toBeUndefined();
    expect(await assignments.withdraw(records.db, stranger, id)).toMatchObject({ ok: false });
    expect(await one(records.db, act.by.company, id)).toMatchObject({ withdrawn: null });
  });

  test('the newest stands first, and the pages hold each once', async () => {
    const made: string[] = [];
    for (let n = 0; n < 65; n += 1) made.push(await give({ title: `No. ${n}` }));
    const overdue = await give({ due: later(1) });
    const seen: string[] = [];
    const when = later(2);
    let after: string | undefined;
    do {
      const page = await list(records.db, act.by.company, {
        when: 'current',
        at: when,
        ...(after === undefined ? {} : { after }),
      });
      expect(page.assignments.length).toBeLessThanOrEqual(30);
      seen.push(...page.assignments.map(({ id }) => id));
      after = page.next;
    } while (after !== undefined);
    // Of one millisecond, the order is that of chance.
    expect(seen).toEqual(made.toSorted().toReversed());
    const past = await list(records.db, act.by.company, { when: 'past', at: when });
    expect(past.assignments.map(({ id }) => id)).toEqual([overdue]);
    expect(past.assignments[0]).toMatchObject({ works: 1 });
  });
});
