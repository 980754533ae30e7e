/**
 * Who answered what, and whether it was right. An item is whatever is answered right or wrong: a
 * question, a take-off, a step that an examiner watched. A byte for each person and item, so that a
 * hundred thousand people with sixty items take six megabytes.
 */
import { fault, ok, type Result } from '#engine/result.ts';

/** An item that was not put to somebody, or that somebody left: it is neither right nor wrong. */
export const absent = 2;

/** Person by person, in `scores[person * items + item]`: 0 wrong, 1 right, `absent`. */
export type Responses = {
  readonly persons: number;
  readonly items: number;
  readonly scores: Uint8Array;
};

export type Answer = 0 | 1 | null;

export type ResponsesFault =
  | { readonly code: 'NOBODY' | 'NO_ITEMS'; readonly message: string }
  | { readonly code: 'UNEVEN_ROW'; readonly person: number; readonly message: string }
  | {
      readonly code: 'NOT_A_SCORE';
      readonly person: number;
      readonly item: number;
      readonly message: string;
    };

/** The one door for answers: a row a person, `null` where there is none. Every fault at once. */
export function responsesFrom(
  rows: readonly (readonly Answer[])[],
): Result<Responses, readonly ResponsesFault[]> {
  const items = rows[0]?.length;
  if (items === undefined) return fault([{ code: 'NOBODY', message: 'Nobody answered.' }]);
  if (items === 0) return fault([{ code: 'NO_ITEMS', message: 'There is nothing to answer.' }]);
  const faults: ResponsesFault[] = [];
  const scores = new Uint8Array(rows.length * items);
  for (const [person, row] of rows.entries()) {
    if (row.length !== items) {
      const message = `Person ${person} has ${row.length} answers and the first one ${items}.`;
      faults.push({ code: 'UNEVEN_ROW', person, message });
      continue;
    }
    for (const [item, answer] of row.entries()) {
      if (answer !== 0 && answer !== 1 && answer !== null) {
        const message = `An answer is 0, 1 or null, not ${String(answer)}.`;
        faults.push({ code: 'NOT_A_SCORE', person, item, message });
      }
      scores[person * items + item] = answer ?? absent;
    }
  }
  return faults.length > 0 ? fault(faults) : ok({ persons: rows.length, items, scores });
}

/** Those persons who answered every item. O(persons x items). */
export function answeredAll({ persons, items, scores }: Responses): Responses {
  const kept = new Uint8Array(scores.length);
  let count = 0;
  for (let person = 0; person < persons; person += 1) {
    const row = scores.subarray(person * items, (person + 1) * items);
    if (row.includes(absent)) continue;
    kept.set(row, count * items);
    count += 1;
  }
  return { persons: count, items, scores: kept.slice(0, count * items) };
}
