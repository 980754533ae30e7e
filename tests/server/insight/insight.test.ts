import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { attemptOf } from '#engine/simulation/attempt-of.ts';
import { spotKey } from '#engine/tally/spot.ts';
import { Inbox } from '#server/attempts/inbox.ts';
import { receive } from '#server/attempts/receive.ts';
import { freshId } from '#server/fresh-id.ts';
import { crewInsight } from '#server/insight/crew-insight.ts';
import { mostPeople } from '#server/insight/crew-standings.ts';
import { points } from '#server/insight/points.ts';
import type { Member } from '#server/people/member.ts';
import { searchText } from '#server/people/folded.ts';
import { walls } from '../../content/walls.ts';
import { at, freshCompany, freshMember } from '../attempts/company.ts';
import { content, keptProblem, keptWall } from '../attempts/kept.ts';
import { freshRecords, kinds, type Records } from '../records.ts';

const method = walls[0]!.sequence.method;
const other = walls.find(({ sequence }) => sequence.method.id !== method.id)!;

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let company: string;
  beforeAll(async () => {
    records = await freshRecords(kind);
    ({ company } = await freshCompany(records.db));
  });
  afterAll(() => records.drop());

  const freshCrew = async (into = company) => {
    const crew = freshId();
    await records.db
      .insertInto('crew')
      .values({ id: crew, company_id: into, name: 'North', created_at: at })
      .execute();
    return crew;
  };
  const send = async (by: Member, list: readonly unknown[], when = at) => {
    const reception = { db: records.db, inbox: new Inbox(records), content };
    const receipts = await receive(reception, { by, at: when }, list);
    expect(receipts.every((receipt) => 'kept' in receipt)).toBe(true);
  };
  const mockup = (kept: object) => ({ kind: 'mockup', kept });
  const insight = (crew: string, asked?: string, of = company) =>
    crewInsight(records.db, content, of, { crew, method: asked });
  const pointsFor = (person: string, of = company) => points(records.db, content, of, person);

  describe('a crew', () => {
    test('with nobody in it, or nobody who practised, has no troubles', async () => {
      const crew = await freshCrew();
      const none = { methods: [], method: undefined, troubles: [], families: [] };
      expect(await insight(crew)).toMatchObject({ ...none, crew: { name: 'North', people: [] } });
      await freshMember(records.db, company, { crew, name: 'Ana' });
      expect(await insight(crew)).toMatchObject({
        ...none,
        crew: { people: [{ name: 'Ana', practised: [] }], isMore: false },
      });
    });

    test('of another company is not there', async () => {
      const { company: foreign } = await freshCompany(records.db);
      expect(await insight(await freshCrew(foreign))).toBeUndefined();
      expect(await insight(freshId())).toBeUndefined();
    });

    test('goes wrong as often as its people do together, and each by name', async () => {
      const crew = await freshCrew();
      const [ana, ben] = [
        await freshMember(records.db, company, { crew, name: 'Ana' }),
        await freshMember(records.db, company, { crew, name: 'Ben' }),
      ];
      await send(
        ana,
        Array.from({ length: 8 }, () => mockup(keptWall())),
      );
      await send(
        ben,
        Array.from({ length: 4 }, () => mockup(keptWall(false))),
      );
      const found = (await insight(crew))!;
      expect(found.methods).toEqual([{ id: method.id, title: method.title, attempts: 12 }]);
      expect(found.method).toBe(method.id);
      const worst = found.troubles[0]!;
      expect(worst).toMatchObject({ judged: 12, wrong: 4, isTooFew: false });
      expect(worst.persons).toEqual([{ person: ben.person, judged: 4, wrong: 4 }]);
      // 4 of 12, by Wilson's formula worked by hand: 0.138 to 0.609.
      expect(worst.rate.low).toBeCloseTo(0.138, 3);
      expect(worst.rate.high).toBeCloseTo(0.609, 3);
      const order = found.troubles.filter(({ spot }) => spot.kind === 'order');
      expect(order.length).toBeGreaterThan(0);
      expect(order.every(({ judged, wrong }) => judged === 12 && wrong === 4)).toBe(true);
    });

    test('is who is in it now: who left it or the company is counted no more', async () => {
      const crew = await freshCrew();
      const [stays, moves, leaves] = [
        await freshMember(records.db, company, { crew, name: 'Stays' }),
        await freshMember(records.db, company, { crew, name: 'Moves' }),
        await freshMember(records.db, company, { crew, name: 'Leaves' }),
      ];
      for (const one of [stays, moves, leaves]) await send(one, [mockup(keptWall(false))]);
      expect((await insight(crew))!.methods[0]!.attempts).toBe(3);
      const change = (id: string, to: { crew_id?: null; left_at?: string }) =>
        records.db.updateTable('person').set(to).where('id', '=', id).execute();
      await change(moves.person, { crew_id: null });
      await change(leaves.person, { left_at: at });
      const found = (await insight(crew))!;
      expect(found.crew.people.map(({ name }) => name)).toEqual(['Stays']);
      expect(found.methods[0]!.attempts).toBe(1);
      expect(found.troubles.every(({ judged }) => judged === 1)).toBe(true);
    });

    test('shows the method that is asked for, else the one practised most', async () => {
      const crew = await freshCrew();
      const by = await freshMember(records.db, company, { crew });
      await send(by, [
        ...Array.from({ length: 2 }, () => mockup(keptWall())),
        mockup(keptWall(true, other)),
      ]);
      const of = other.sequence.method.id;
      expect(await insight(crew)).toMatchObject({ method: method.id });
      const asked = (await insight(crew, of))!;
      expect(asked.method).toBe(of);
      expect(new Set(asked.troubles.map(({ spot }) => spot.method))).toEqual(new Set([of]));
      expect(await insight(crew, 'no-such-method')).toMatchObject({ method: method.id });
    });

    test('leaves out spots that the method no longer has', async () => {
      const crew = await freshCrew();
      const by = await freshMember(records.db, company, { crew });
      await send(by, [mockup(keptWall())]);
      const before = (await insight(crew))!.troubles.map(({ spot }) => spotKey(spot));
      const gone = { [`${method.id}/step/gone`]: [3, 3], nonsense: [1, 1] };
      const stored = records.db.selectFrom('standing').select('tally');
      const { tally } = await stored.where('person_id', '=', by.person).executeTakeFirstOrThrow();
      await records.db
        .updateTable('standing')
        .set({ tally: JSON.stringify({ ...(JSON.parse(tally) as object), ...gone }) })
        .where('person_id', '=', by.person)
        .execute();
      const after = (await insight(crew))!.troubles.map(({ spot }) => spotKey(spot));
      expect(after.toSorted()).toEqual(before.toSorted());
    });

    test('tells the parts of problems that went wrong', async () => {
      const crew = await freshCrew();
      const by = await freshMember(records.db, company, { crew });
      const [first, second] = [...content.takeoffs.values()];
      await send(by, [
        { kind: 'takeoff', kept: keptProblem(first!.id, '3') },
        { kind: 'takeoff', kept: wrongProblem(first!.id, '4') },
        { kind: 'takeoff', kept: keptProblem(second!.id, '3') },
      ]);
      const { families, methods } = (await insight(crew))!;
      expect(methods).toEqual([]);
      expect(families.map(({ id }) => id)).toEqual([first!.id]);
      expect(families[0]!.parts[0]).toMatchObject({ judged: 2, wrong: 1, isTooFew: true });
    });

    test('of very many is shown and counted up to a bound, and says so', async () => {
      const crew = await freshCrew();
      await records.db
        .insertInto('person')
        .values(
          Array.from({ length: mostPeople + 1 }, (_, n) => ({
            id: freshId(),
            company_id: company,
            crew_id: crew,
            name: `Person ${n}`,
            roles: 'apprentice',
            search: searchText(`Person ${n}`, null),
            created_at: at,
          })),
        )
        .execute();
      const found = (await insight(crew))!;
      expect(found.crew.people).toHaveLength(mostPeople);
      expect(found.crew.isMore).toBe(true);
    });
  });

  describe('a person', () => {
    test('who has not practised has no points', async () => {
      const by = await freshMember(records.db, company);
      expect(await pointsFor(by.person)).toEqual({ attempts: 0, methods: [], next: [] });
    });

    test('is sure of what was right three times, and has nothing of it to practise', async () => {
      const by = await freshMember(records.db, company);
      await send(
        by,
        Array.from({ length: 3 }, () => mockup(keptWall())),
      );
      const found = await pointsFor(by.person);
      expect(found.methods).toMatchObject([{ id: method.id, attempts: 3 }]);
      const seen = found.methods[0]!.points.filter((point) => point.seen === 3);
      expect(seen.length).toBeGreaterThan(0);
      expect(seen.every(({ sureness, right }) => sureness === 'sure' && right === 3)).toBe(true);
      expect(found.next.every(({ sureness }) => sureness !== 'sure')).toBe(true);
    });

    test('counts what was built without hints, and nobody else’s', async () => {
      const [by, someone] = [
        await freshMember(records.db, company),
        await freshMember(records.db, company),
      ];
      await send(by, [
        mockup({ ...keptWall(), mode: 'guided' }),
        mockup(keptWall(false)),
        { kind: 'takeoff', kept: keptProblem([...content.takeoffs.keys()][0]!, '3') },
      ]);
      await send(someone, [mockup(keptWall())]);
      expect((await pointsFor(by.person)).attempts).toBe(1);
      const { company: foreign } = await freshCompany(records.db);
      expect((await pointsFor(by.person, foreign)).attempts).toBe(0);
    });

    test('is judged by the last attempts as they came', async () => {
      const by = await freshMember(records.db, company);
      await send(by, [mockup(keptWall(false))], '2030-05-01T08:00:00.000Z');
      for (const day of [2, 3, 4, 5]) {
        await send(by, [mockup(keptWall())], `2030-05-0${day}T08:00:00.000Z`);
      }
      const all = (await pointsFor(by.person)).methods[0]!.points;
      const wrongFirst = all.filter(({ right, seen }) => seen === 5 && right === 4);
      expect(wrongFirst.length).toBeGreaterThan(0);
      expect(wrongFirst.every(({ sureness }) => sureness === 'sure')).toBe(true);
    });

    test('what a made-up learner built comes back with as many attempts as were sent', async () => {
      const by = await freshMember(records.db, company);
      const learner = { ability: 0, learning: 0.1, practised: 0 };
      const built = Array.from({ length: 12 }, (_, n) => {
        const { sequence } = walls[(n * 7) % walls.length]!;
        return mockup({ ...keptWall(), attempt: attemptOf(sequence, learner, n) });
      });
      await send(by, built);
      const found = await pointsFor(by.person);
      expect(found.attempts).toBe(12);
      expect(found.methods.reduce((sum, { attempts }) => sum + attempts, 0)).toBe(12);
      expect(found.next).toHaveLength(5);
    });
  });
});

/** Every part answered with nonsense. */
function wrongProblem(family: string, seed: string) {
  const kept = keptProblem(family, seed);
  return {
    ...kept,
    answers: kept.answers.map((answer) => ({ ...answer, tries: [{ text: '1/7' }] })),
  };
}
