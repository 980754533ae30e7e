import { describe, expect, test } from 'vitest';
import { allSites } from '#engine/method/site.ts';
import { breakdown, noteNumber } from '#ui/reading/breakdown.ts';
import { tinyBundle, tinySequence } from '../tiny-content.ts';

describe('truth', () => {
  test('a row tells which earlier steps it comes after, and why', () => {
    const { rows } = breakdown(tinySequence({ edge: 'drip' }), tinyBundle);
    const after = rows[2]?.after.map(({ number, because, severity }) => [
      number,
      because.en,
      severity,
    ]);
    expect(after).toEqual([
      [1, 'It bonds.', 'critical'],
      [2, 'It laps.', 'major'],
    ]);
  });

  test('a wait names the steps that it holds up', () => {
    const { rows } = breakdown(tinySequence({ edge: 'drip' }), tinyBundle);
    expect(rows.map(({ waiting }) => waiting)).toEqual([[3], [], []]);
  });

  test('only what is published and cited on the sheet has a note', () => {
    const { sources } = breakdown(tinySequence(), tinyBundle);
    expect(sources.map(({ id }) => id)).toEqual(['a-standard']);
    const common = [...tinyBundle.sources.values()].find(({ publisher }) => !publisher);
    expect(common && noteNumber(sources, common.id)).toBeUndefined();
    expect(noteNumber(sources, sources[0]!.id)).toBe(1);
  });

  test('a caution is in full at the first step that has it', () => {
    const [first] = breakdown(tinySequence(), tinyBundle).rows;
    expect(first?.cautions.map(({ first }) => first.id)).toEqual(['prime']);
  });
});

describe('laws', () => {
  test('on every site each constraint points back to an earlier row', () => {
    for (const site of allSites(tinyBundle.method.site)) {
      const sequence = tinySequence(site);
      const { rows } = breakdown(sequence, tinyBundle);
      const constraints = rows.flatMap(({ number, after }) =>
        after.map((constraint) => ({ number, constraint })),
      );
      expect(constraints).toHaveLength(sequence.constraints.length);
      for (const { number, constraint } of constraints) {
        expect(constraint.number).toBeLessThan(number);
        expect(rows[constraint.number - 1]?.step.id).toBe(constraint.earlier.id);
      }
    }
  });
});
