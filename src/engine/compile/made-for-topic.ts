/**
 * Questions made from the methods that a topic is about: their order, reasons, waits and numbers. The same
 * content makes the same ones with the same ids, so that one which was missed can come back days later.
 * O(walls x questions).
 */
import type { Method } from '#engine/method/method.ts';
import { sequenceOf } from '#engine/method/sequence.ts';
import { allSites, type Site } from '#engine/method/site.ts';
import { randomFrom, shuffle } from '#engine/random.ts';
import { madeQuestions, sameness } from '#engine/written/made/made-question.ts';
import { posed } from '#engine/written/posed.ts';
import type { Question } from '#engine/written/question.ts';
import type { Topic } from '#engine/written/topic.ts';
import type { Content } from './content.ts';

/** Of a topic: no more than people wrote, so that these stay the greater part. */
const shareOfWritten = 1 / 2;
const wallsEach = 3;
const drawnEach = 40;

export function madeForTopic(content: Content, topic: Topic): readonly Question[] {
  const { questions } = topic;
  const steps = new Set(questions.flatMap(({ of }) => of.map(nameOf)));
  const methods = [...new Set(questions.flatMap(({ of }) => of.map(({ method }) => method)))];
  const asked = new Set(questions.map(sameness));
  const made = new Map<string, Question>();
  for (const question of methods.flatMap((id) => madeOn(content, topic, content.methods.get(id)))) {
    const isAboutTopic = question.of.every((one) => steps.has(nameOf(one)));
    const name = sameness(question);
    if (isAboutTopic && !asked.has(name) && posed(question, 0, content)) made.set(name, question);
  }
  const most = Math.floor(questions.length * shareOfWritten);
  return dealt(shuffle(randomFrom(`${topic.id}/made`), [...made.values()])).slice(0, most);
}

/** One of each kind in turn, so that a kind of which few can be made is asked all the same. */
function dealt(questions: readonly Question[]): readonly Question[] {
  const places = new Map<Question['kind'], number>();
  const turns = questions.map((question) => {
    const turn = places.get(question.kind) ?? 0;
    places.set(question.kind, turn + 1);
    return { question, turn };
  });
  return turns.toSorted((a, b) => a.turn - b.turn).map(({ question }) => question);
}

const nameOf = ({ method, step }: Question['of'][number]): string => `${method}/${step}`;

function madeOn(content: Content, topic: Topic, method: Method | undefined): readonly Question[] {
  const { patterns } = content;
  const sheet = method && content.dataSheets.get(method.dataSheet);
  if (!method || !sheet || !patterns) return [];
  return sitesOf(method, topic).flatMap((site) => {
    const sequence = sequenceOf(method, sheet, site);
    if (!sequence.ok) return [];
    const ground = { sequence: sequence.value, patterns };
    return madeQuestions(ground, `${topic.id}/practice`, drawnEach);
  });
}

const sitesOf = ({ id, site }: Method, topic: Topic): readonly Site[] =>
  shuffle(randomFrom(`${topic.id}/${id}/sites`), allSites(site)).slice(0, wallsEach);
