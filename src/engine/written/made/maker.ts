import type { Sequence, SequenceStep } from '#engine/method/sequence.ts';
import type { Random } from '#engine/random.ts';
import type { Text } from '#engine/text.ts';
import { inEach } from '#engine/written/number-words.ts';
import { phrase, type Patterns } from '#engine/written/patterns.ts';
import type { Asked, Question, QuestionId, TopicId } from '#engine/written/question.ts';

/** What questions are made from: one wall, and the sentences around what it says. */
export type Ground = { readonly sequence: Sequence; readonly patterns: Patterns };

/** Makes one question by chance; undefined where this draw gives none. */
export type Maker = (ground: Ground, random: Random, id: QuestionId) => Question | undefined;

/** What every made question carries: its evidence and source are those of the step it is about. */
export const askedOf = (
  { sequence: { method, dataSheet } }: Ground,
  { id: step, source }: SequenceStep,
  id: QuestionId,
  ask: Text,
  point: Text,
): Asked => ({
  id,
  topic: method.id as string as TopicId,
  ask,
  point,
  of: [{ method: method.id, step }],
  difficulty: 'middling',
  source,
  dataSheet: dataSheet.id,
  explain: [],
});

/** Which wall is meant, where the answer hangs on it. */
export function wallWords({ sequence: { method, site }, patterns }: Ground): Text {
  const values = method.site.flatMap(
    (question) => question.values.find(({ id }) => id === site[question.id])?.name ?? [],
  );
  const named = inEach((language) => values.map((name) => name[language]).join(' · '));
  return phrase(patterns, 'on-this-wall', { site: named });
}
