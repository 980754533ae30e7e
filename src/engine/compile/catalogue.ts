import type { DataSheet } from '#engine/method/data-sheet.ts';
import type { Assembly } from '#engine/method/drawing.ts';
import type { MethodId } from '#engine/method/method.ts';
import type { SiteQuestion } from '#engine/method/site.ts';
import type { Family, FamilyId } from '#engine/takeoff/family.ts';
import { instanceOf } from '#engine/takeoff/instance.ts';
import type { Drawn } from '#engine/takeoff/picture.ts';
import { problemOf } from '#engine/takeoff/problem.ts';
import { takeoffOf } from '#engine/takeoff/takeoff.ts';
import type { Topic } from '#engine/takeoff/topic.ts';
import type { Text } from '#engine/text.ts';
import type { QuestionKind, TopicId } from '#engine/written/question.ts';
import type { Content } from './content.ts';

/** What there is to choose from, without the work itself. */
export type Catalogue = {
  readonly revision: string;
  readonly methods: readonly MethodEntry[];
  readonly takeoffs: readonly TakeoffEntry[];
  readonly topics: readonly TopicEntry[];
};

export type MethodEntry = {
  readonly id: MethodId;
  readonly title: Text;
  readonly purpose: Text;
  readonly assembly: Assembly;
  readonly site: readonly SiteQuestion[];
  /** On the walls of all its sites together. */
  readonly steps: number;
};

export type TakeoffEntry = {
  readonly id: FamilyId;
  readonly title: Text;
  readonly topic: Topic;
  /** What is computed, a part after the other. */
  readonly computes: readonly Text[];
  /** Of a sample of its problems. */
  readonly picture: Drawn | undefined;
};

export type TopicEntry = {
  readonly id: TopicId;
  readonly title: Text;
  readonly about: Text;
  /** Of each kind that it has. */
  readonly questions: Readonly<Partial<Record<QuestionKind, number>>>;
};

const made = new WeakMap<Content, Catalogue>();

/** Put together once for each content: the samples take a while. */
export function catalogueOf(content: Content): Catalogue {
  const known = made.get(content);
  if (known) return known;
  const catalogue = putTogether(content);
  made.set(content, catalogue);
  return catalogue;
}

const putTogether = ({ revision, methods, takeoffs, topics, dataSheets }: Content): Catalogue => ({
  revision,
  methods: [...methods.values()].map(({ id, title, purpose, assembly, site, steps }) => ({
    id,
    title,
    purpose,
    assembly,
    site,
    steps: steps.length,
  })),
  takeoffs: [...takeoffs.values()].map((family) => ({
    id: family.id,
    title: family.title,
    topic: family.topic,
    computes: family.parts.map(({ name }) => name),
    picture: samplePicture(family, dataSheets.get(family.dataSheet)),
  })),
  topics: [...topics.values()].map(({ id, title, about, questions }) => ({
    id,
    title,
    about,
    questions: Object.fromEntries(
      [...Map.groupBy(questions, ({ kind }) => kind)].map(([kind, own]) => [kind, own.length]),
    ),
  })),
});

function samplePicture(family: Family, sheet: DataSheet | undefined): Drawn | undefined {
  const takeoff = sheet && takeoffOf(family, sheet);
  const sample = takeoff?.ok ? instanceOf(takeoff.value, 'sample') : undefined;
  return sample?.ok ? problemOf(sample.value).pictures[0] : undefined;
}
