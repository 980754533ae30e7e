import type { SourceId } from '#engine/method/method.ts';
import type { Term, TermGroup, TermGroupId, TermId } from './content.ts';
import { entries, record } from './group.ts';
import { list } from './list.ts';
import { mapped, optional, type Reader } from './reader.ts';
import { keyAt, type SourceFile } from './source-file.ts';
import { checkName } from './names.ts';
import { idOf, text, wordLists } from './words.ts';

const term = record({
  term: text,
  means: text,
  also: optional(wordLists, wordLists.blank),
  see: optional(list(idOf<TermId>('term'), 'terms'), []),
  source: idOf<SourceId>('source'),
});

const terms: Reader<readonly Term[]> = mapped(
  entries(term, 'a group of terms, each under its id'),
  (found) => found.map(([id, value]) => ({ ...value, id: id as TermId })),
);

export const termGroup = (id: TermGroupId): Reader<TermGroup> =>
  mapped(record({ title: text, terms }), (group) => ({
    id,
    title: group.title,
    terms: new Map(group.terms.map((each) => [each.id, each])),
  }));

type Opened = { readonly file: SourceFile; readonly value: TermGroup };

/** A term stands in one group only, and names others that stand in any. */
export function checkTerms(groups: readonly Opened[]): void {
  const groupOf = new Map<TermId, string>();
  for (const { file, value } of groups) {
    for (const id of value.terms.keys()) {
      const first = groupOf.get(id);
      if (first === undefined) groupOf.set(id, file.path);
      else {
        file.fault(
          'DUPLICATE_KEY',
          keyAt(file, ['terms', id]),
          `The term "${id}" stands in ${first} already.`,
          'Keep one of them, or give one another name.',
        );
      }
    }
  }
  const known = new Set(groupOf.keys());
  for (const { file, value } of groups) {
    for (const { id, see } of value.terms.values()) {
      see.forEach((other, index) =>
        checkName(file, 'UNKNOWN_TERM', ['terms', id, 'see', index], 'term', other, known),
      );
    }
  }
}
