import type { Content } from '#engine/compile/content.ts';
import { methodPart, takeoffPart, writtenPart } from './content-address.ts';

/** Every part that a page can ask for: what a browser keeps, to open them all without signal. */
export const contentParts = ({
  methods,
  takeoffs,
  topics,
}: Pick<Content, 'methods' | 'takeoffs' | 'topics'>): readonly string[] => [
  'catalogue',
  'glossary',
  'search',
  ...[...methods.keys()].map(methodPart),
  ...[...takeoffs.keys()].map(takeoffPart),
  ...[...topics.keys()].map(writtenPart),
];
