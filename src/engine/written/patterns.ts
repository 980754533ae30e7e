import type { Language, Text } from '#engine/text.ts';
import { filled } from './fill-in.ts';

/** The sentences around what a method says, from which questions are made; each with what it may name. */
export const patternNames = {
  'on-this-wall': ['site'],
  'before-ask': ['wall', 'step'],
  'before-point': ['step', 'other', 'because'],
  'before-unbound': ['step', 'other'],
  'before-later': ['step', 'other'],
  'reason-ask': ['step'],
  'reason-point': ['step', 'reason'],
  'reason-of-other': ['other'],
  'key-point-ask': ['step'],
  'key-point-point': ['step', 'point', 'reason'],
  'key-point-of-other': ['other'],
  'value-ask': ['step', 'question'],
  'least-ask': ['step', 'question'],
  'most-ask': ['step', 'question'],
  'value-point': ['name', 'rule', 'because'],
  'value-outside': ['rule'],
  'value-not-the-bound': ['rule'],
  'value-of-other': ['other', 'rule'],
  'wait-ask': ['wall', 'step'],
  'wait-point': ['step', 'rule', 'because'],
  'missing-ask': ['wall', 'list'],
  'missing-point': ['step', 'reason'],
  'missing-done': ['other'],
  'missing-elsewhere': ['other'],
  'order-ask': ['wall'],
  'order-point': ['first', 'last'],
  'fault-ask': ['wall'],
  'fault-point': ['step', 'because'],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type PatternId = keyof typeof patternNames;
export type Patterns = Readonly<Record<PatternId, Text>>;

type NamesOf<P extends PatternId> = (typeof patternNames)[P][number];

/** A pattern with its names replaced. */
export const phrase = <P extends PatternId>(
  patterns: Patterns,
  id: P,
  values: Readonly<Record<NamesOf<P>, Text>>,
): Text =>
  filled(
    patterns[id],
    (name: string, language: Language) =>
      (values as Readonly<Partial<Record<string, Text>>>)[name]?.[language],
  );
