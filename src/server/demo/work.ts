import type { Content } from '#engine/compile/content.ts';
import type { Topic } from '#engine/written/topic.ts';
import type { Draft, Piece } from '../assignments/draft.ts';

const day = 24 * 60 * 60 * 1000;

/** `at` is when it was given; who is not named has it through a crew. */
export type DemoDraft = {
  readonly draft: Draft;
  readonly at: string;
  readonly withdrawn?: string;
};

type Span = {
  readonly title: string;
  readonly opens: number;
  readonly due: number;
  readonly tries?: string;
  readonly note?: string;
  /** Questions of a topic, too. */
  readonly isWritten?: boolean;
};

/** In days from the day on which it is made: when it opens and when it is due. */
const spans: readonly Span[] = [
  { title: 'First walls', opens: -300, due: -240 },
  { title: 'Corners and seams', opens: -120, due: -60, tries: '6', isWritten: true },
  {
    title: 'Before the cold',
    opens: -30,
    due: -4,
    tries: '3',
    note: 'On your own, without hints.',
  },
  { title: 'This fortnight', opens: -3, due: 11, isWritten: true },
  { title: 'Next job', opens: 6, due: 27, note: 'Read the data sheet before you begin.' },
];

const topicPieces = (topic: Topic | undefined): readonly Piece[] =>
  topic
    ? [
        {
          kind: 'written',
          topic: topic.id,
          questions: Math.min(8, topic.questions.length),
          pass: 75,
          count: 1,
        },
      ]
    : [];

type For = { readonly crews: readonly string[]; readonly persons: readonly string[] };

/**
 * What each crew was given, and two people besides: a wall of a method and a family of problems each time,
 * and now and then questions of a topic.
 */
export function demoDrafts(
  content: Content,
  { crews, persons }: For,
  today: number,
): readonly DemoDraft[] {
  const [methods, families] = [[...content.methods.keys()], [...content.takeoffs.keys()]];
  const topics = [...content.topics.values()];
  const instant = (days: number) => new Date(today + days * day).toISOString();
  const drafted = (
    { title, opens, due, tries = '', note = '', isWritten = false }: Span,
    to: For,
    turn: number,
  ): DemoDraft => ({
    // What opens later is given now.
    at: instant(Math.min(opens, -1)),
    draft: {
      title,
      note,
      opens: instant(opens),
      // The day's last instant, as a form sends it.
      due: new Date(today + due * day - 1).toISOString(),
      tries,
      pass: '90',
      pieces: [
        { kind: 'mockup', method: methods[turn % methods.length]!, count: 1 },
        { kind: 'takeoff', family: families[(3 * turn) % families.length]!, count: 1 },
        ...(isWritten ? topicPieces(topics[turn % topics.length]) : []),
      ],
      ...to,
    },
  });
  const toCrews = spans.flatMap((span, turn) =>
    crews.map((crew, place) => drafted(span, { crews: [crew], persons: [] }, turn + place)),
  );
  const once = { title: 'Once more, in peace', opens: -8, due: 5 };
  const mistaken = { title: 'Given to the wrong crew', opens: -75, due: -50 };
  return [
    ...toCrews,
    drafted(once, { crews: [], persons }, 1),
    { ...drafted(mistaken, { crews: crews.slice(0, 1), persons: [] }, 2), withdrawn: instant(-74) },
  ].toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
}
