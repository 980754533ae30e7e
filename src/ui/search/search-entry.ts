import type { Content, Term } from '#engine/compile/content.ts';
import type { Method, Step } from '#engine/method/method.ts';
import { languages, type Text } from '#engine/text.ts';

export const entryKinds = ['method', 'step', 'term'] as const;
export type EntryKind = (typeof entryKinds)[number];

/** A place that can be found, with all its words in every language. */
export type SearchEntry = {
  readonly kind: EntryKind;
  readonly title: Text;
  /** What it belongs to: the method of a step, the group of a term. */
  readonly within: Text | undefined;
  /** One a sentence or point, so that the right one can be shown. */
  readonly body: readonly Text[];
  readonly address: string;
};

/** Everything that can be found, in the order in which it is taught. */
export const searchEntries = (content: Content): readonly SearchEntry[] => [
  ...[...content.methods.values()].flatMap((method) => [
    methodEntry(method),
    ...method.steps.map((step) => stepEntry(method, step)),
  ]),
  ...[...content.glossary.values()].flatMap((group) =>
    [...group.terms.values()].map((term) => ({
      kind: 'term' as const,
      title: term.term,
      within: group.title,
      body: [term.means, ...alsoSaid(term.also)],
      address: `/glossary#${term.id}`,
    })),
  ),
];

const methodEntry = (method: Method): SearchEntry => ({
  kind: 'method',
  title: method.title,
  within: undefined,
  body: [method.purpose],
  address: `/methods/${method.id}`,
});

const stepEntry = (method: Method, step: Step): SearchEntry => ({
  kind: 'step',
  title: step.say,
  within: method.title,
  body: [...step.keyPoints, step.reason, ...step.after.map(({ because }) => because)],
  address: `/methods/${method.id}${aSiteWith(step)}#${step.id}`,
});

/** A step that not every wall has is opened on one that does. */
function aSiteWith(step: Step): string {
  const answers = [...step.when].flatMap(([question, [value]]) =>
    value ? [[question, value]] : [],
  );
  return answers.length === 0 ? '' : `?${new URLSearchParams(answers).toString()}`;
}

function alsoSaid(also: Term['also']): readonly Text[] {
  const said = { en: also.en.join(', '), es: also.es.join(', ') };
  return languages.some((language) => said[language] !== '') ? [said] : [];
}
