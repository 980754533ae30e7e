import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Deed, statementOf } from '#engine/statement/statement.ts';
import {
  statementFaults,
  type StatementRule,
  statementRules,
} from '#engine/statement/statement-faults.ts';

const home = 'https://walls.example/company/0190a000-0000-7000-8000-000000000001';
const deed: Deed = {
  id: '0190a000-0000-7000-8000-000000000002',
  person: '0190a000-0000-7000-8000-000000000003',
  verb: 'passed',
  activity: 'schemes/base-of-wall-installer/knowledge',
  name: { en: 'Written questions', es: 'Preguntas escritas' },
  share: 0.85,
  at: '2030-05-01T07:30:00.000Z',
};
const right = statementOf(home, deed);

describe('truth', () => {
  test('a passed part is told with its verb, its score and the account of the person', () => {
    expect(right).toMatchObject({
      id: deed.id,
      actor: { account: { homePage: home, name: deed.person } },
      verb: { id: 'http://adlnet.gov/expapi/verbs/passed' },
      object: { id: `${home}/schemes/base-of-wall-installer/knowledge` },
      result: { success: true, score: { scaled: 0.85 } },
      version: '1.0.0',
    });
    expect(JSON.stringify(right)).not.toContain('mbox');
  });

  test('what is completed has no result, and what was not measured no score', () => {
    expect(statementOf(home, { ...deed, verb: 'completed' }).result).toBeUndefined();
    const { share: _, ...unmeasured } = deed;
    expect(statementOf(home, { ...unmeasured, verb: 'failed' }).result).toEqual({ success: false });
  });
});

const { actor, verb, object } = right;
const scored = (score: unknown) => ({ ...right, result: { success: true, score } });

/** One breach each, with the rule and the place that are to be told. */
const refusals: readonly (readonly [unknown, StatementRule, string])[] = [
  ['text', 'NOT_AN_OBJECT', ''],
  [[right], 'NOT_AN_OBJECT', ''],
  [{ verb, object }, 'MISSING', 'actor'],
  [{ actor, object }, 'MISSING', 'verb'],
  [{ actor, verb }, 'MISSING', 'object'],
  [{ ...right, stars: 5 }, 'UNKNOWN_PROPERTY', 'stars'],
  [{ ...right, result: null }, 'NULL', 'result'],
  [{ ...right, id: 'seven' }, 'NOT_A_UUID', 'id'],
  [{ ...right, version: '0.95' }, 'WRONG_VERSION', 'version'],
  [{ ...right, version: '2.0.0' }, 'WRONG_VERSION', 'version'],
  [{ ...right, timestamp: '2030-05-01' }, 'NOT_AN_INSTANT', 'timestamp'],
  [{ ...right, timestamp: '2030-05-01T07:30:00' }, 'NOT_AN_INSTANT', 'timestamp'],
  [{ ...right, verb: { id: 'passed' } }, 'NOT_AN_IRI', 'verb.id'],
  [{ ...right, verb: {} }, 'MISSING', 'verb.id'],
  [
    { ...right, verb: { ...verb, display: { 'not a tag': 'x' } } },
    'NOT_A_LANGUAGE',
    'verb.display.not a tag',
  ],
  [{ ...right, verb: { ...verb, display: { en: 7 } } }, 'NOT_TEXT', 'verb.display.en'],
  [
    { ...right, object: { ...object, objectType: 'Thing' } },
    'UNKNOWN_PROPERTY',
    'object.objectType',
  ],
  [{ ...right, actor: { objectType: 'Agent' } }, 'NOT_ONE_IDENTIFIER', 'actor'],
  [
    { ...right, actor: { ...actor, mbox: 'mailto:a@walls.example' } },
    'NOT_ONE_IDENTIFIER',
    'actor',
  ],
  [{ ...right, result: { success: 'true' } }, 'NOT_A_TRUTH', 'result.success'],
  [scored({ scaled: '0.85' }), 'NOT_A_NUMBER', 'result.score.scaled'],
  [scored({ scaled: 1.01 }), 'OUT_OF_RANGE', 'result.score'],
  [scored({ scaled: -1.01 }), 'OUT_OF_RANGE', 'result.score'],
  [scored({ raw: 11, min: 0, max: 10 }), 'OUT_OF_RANGE', 'result.score'],
  [scored({ raw: -1, min: 0, max: 10 }), 'OUT_OF_RANGE', 'result.score'],
  [scored({ min: 5, max: 5 }), 'OUT_OF_RANGE', 'result.score'],
];

describe('refusals', () => {
  test.each(refusals)('%j is refused by %s at %s', (value, rule, place) => {
    expect(statementFaults(value)).toEqual([{ rule, place }]);
  });

  test('every rule has a refusal', () => {
    const shown = new Set(refusals.map(([, rule]) => rule));
    expect([...shown].toSorted()).toEqual([...statementRules].toSorted());
  });

  test.each(['1.0', '1.0.0', '1.0.3', '1.0.17'])('version %s is taken', (version) => {
    expect(statementFaults({ ...right, version })).toEqual([]);
  });

  test.each([-1, 0, 1])('a scaled score of %d is taken', (scaled) => {
    expect(statementFaults(scored({ scaled }))).toEqual([]);
  });

  test('all faults are told at once', () => {
    expect(statementFaults({ verb: {}, id: 1 })).toHaveLength(4);
  });
});

describe('laws', () => {
  test('whatever is written here is a statement, also after a journey through JSON', () => {
    fc.assert(
      fc.property(
        fc.uuid({ version: 7 }),
        fc.constantFrom('passed' as const, 'failed' as const, 'completed' as const),
        fc.option(fc.double({ min: 0, max: 1, noNaN: true }), { nil: undefined }),
        fc.date({ noInvalidDate: true, min: new Date(0), max: new Date('9999-01-01') }),
        (id, done, share, at) => {
          const made = statementOf(home, { ...deed, id, verb: done, share, at: at.toISOString() });
          expect(statementFaults(JSON.parse(JSON.stringify(made)))).toEqual([]);
        },
      ),
    );
  });
});
