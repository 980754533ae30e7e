/** What is done leaves its entry in the audit trail: by whom, on what, once, and nothing where it is refused. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import * as assignments from '#server/assignments/assignments.ts';
import { verify } from '#server/audit/audit-trail.ts';
import { makeFeed } from '#server/certificates/feeds.ts';
import { enterTrainer } from '#server/checks/involvement.ts';
import { freshId } from '#server/fresh-id.ts';
import * as panels from '#server/numbers/panels.ts';
import * as cards from '#server/people/cards.ts';
import type { Act } from '#server/people/member.ts';
import { draft, later } from '../assignments/given.ts';
import { content } from '../attempts/kept.ts';
import { added, deeds, freshCompany } from '../people/company.ts';
import { freshRecords, kinds, type Records } from '../records.ts';

const scheme = [...content.schemes.values()].find(({ requires }) => requires.length === 0)!;
const part = scheme.parts.find(({ kind }) => kind === 'written')!;

type Given = { readonly db: Records['db']; readonly act: Act; readonly person: string };
type Outcome = { readonly ok: true; readonly value: unknown } | { readonly ok: false };

const valueOf = (made: Outcome): string => {
  if (!made.ok) throw new Error('It was refused.');
  return made.value as string;
};
const assign = async ({ db, act, person }: Given) =>
  valueOf(await assignments.compose(db, act, content, draft({ persons: [person] })));
const dates = { opens: '', due: later(20), tries: '3' };
const panel = async ({ db, act }: Given) =>
  valueOf(await panels.open(db, act, content, { scheme: scheme.id, part: part.id }));
const rated = async (given: Given, percent: number) => {
  const { db, act } = given;
  const id = await panel(given);
  const seen = (await panels.panelFor(db, content, act, id))!;
  const ratings = Object.fromEntries(seen.items.map(({ item }) => [item, percent]));
  return { id, made: await panels.rate(db, act, id, ratings) };
};

/** Does it, and says on what it was done. */
const done: Readonly<Record<string, (given: Given) => Promise<string>>> = {
  assign,
  'change assignment dates': async (given) => {
    const id = await assign(given);
    valueOf(await assignments.changeDates(given.db, given.act, id, dates));
    return id;
  },
  'withdraw assignment': async (given) => {
    const id = await assign(given);
    valueOf(await assignments.withdraw(given.db, given.act, id));
    return id;
  },
  'open panel': panel,
  'rate for panel': async (given) => {
    const { id, made } = await rated(given, 70);
    valueOf(made);
    return id;
  },
  'enter trainer': async ({ db, act, person }) => {
    const on = act.at.slice(0, 10);
    valueOf(await enterTrainer(db, act, { candidate: person, person: act.by.person, on }));
    return person;
  },
  'make calendar address': async ({ db, act }) => {
    if (!(await makeFeed(db, act, 'own'))) throw new Error('It was refused.');
    return act.by.person;
  },
  'revoke crew card': async ({ db, act, person }) => {
    await cards.make(db, act, [person]);
    valueOf(await cards.revoke(db, act, person));
    return person;
  },
};

/** The same where it cannot be done. */
const refused: typeof done = {
  assign: async ({ db, act }) => {
    await assignments.compose(db, act, content, draft({ persons: [freshId()] }));
    return '';
  },
  'change assignment dates': async ({ db, act }) => {
    const id = freshId();
    await assignments.changeDates(db, act, id, dates);
    return id;
  },
  'withdraw assignment': async ({ db, act }) => {
    const id = freshId();
    await assignments.withdraw(db, act, id);
    return id;
  },
  'open panel': async ({ db, act }) => {
    await panels.open(db, act, content, { scheme: scheme.id, part: 'none' });
    return '';
  },
  'rate for panel': async (given) => (await rated(given, 101)).id,
  'enter trainer': async ({ db, act, person }) => {
    await enterTrainer(db, act, { candidate: person, person: act.by.person, on: 'today' });
    return person;
  },
  'make calendar address': async ({ db, act }) => {
    const by = { ...act.by, roles: ['apprentice'] } as const;
    await makeFeed(db, { ...act, by }, 'company');
    return act.by.person;
  },
  'revoke crew card': async ({ db, act, person }) => {
    await cards.revoke(db, act, person);
    return person;
  },
};

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  beforeAll(async () => {
    records = await freshRecords(kind);
  });
  afterAll(() => records.drop());

  const fresh = async (): Promise<Given> => {
    const act = await freshCompany(records.db);
    return { db: records.db, act, person: await added(records.db, act, { name: 'Ana' }) };
  };

  test.each(Object.keys(done))('%s is written down once, by whom and on what', async (action) => {
    const given = await fresh();
    const { company, person } = given.act.by;
    const subject = await done[action]!(given);
    const rows = await records.db
      .selectFrom('audit_entry')
      .select(['actor', 'subject'])
      .where('company_id', '=', company)
      .where('action', '=', action)
      .execute();
    expect(rows).toEqual([{ actor: person, subject }]);
    expect(await verify(records.db, company)).toMatchObject({ faults: [] });
  });

  test.each(Object.keys(refused))('%s that is refused is not written down', async (action) => {
    const given = await fresh();
    await refused[action]!(given);
    expect(await deeds(records.db, given.act.by.company)).not.toContain(action);
  });
});
