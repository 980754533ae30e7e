/** What an invented person answers to a run of written questions: right, a wrong choice, or nothing. */
import type { Content } from '#engine/compile/content.ts';
import { formatExact } from '#engine/measure/format-exact.ts';
import { middleOf } from '#engine/method/rule.ts';
import { fraction, pick, randomFrom } from '#engine/random.ts';
import type { Answer } from '#engine/written/answer.ts';
import type { KeptRun } from '#engine/written/kept-run.ts';
import { keyTo } from '#engine/written/key.ts';
import { numberRule } from '#engine/written/number-rule.ts';
import { posed } from '#engine/written/posed.ts';
import type { Question, TopicId } from '#engine/written/question.ts';
import { runOf } from '#engine/written/run.ts';

type Asked = { readonly topic: TopicId; readonly questions: number };

/** `ability` in logits, with what practice has taught. Undefined where there is no such topic. */
export function writtenRun(
  content: Content,
  { topic: id, questions: count }: Asked,
  ability: number,
  { id: own, at, seed }: Pick<KeptRun, 'id' | 'at' | 'seed'>,
): KeptRun | undefined {
  const topic = content.topics.get(id);
  if (!topic) return undefined;
  const random = randomFrom(`${seed}/written`);
  const asked = runOf(topic, { seed, count }, content);
  const chance = 1 / (1 + Math.exp(-(1.2 + ability)));
  const answers = asked.map((question) => {
    const put = posed(question, seed, content)!;
    if (fraction(random) < chance) return rightAnswer(content, question);
    if (put.kind !== 'choose-one') return null;
    return { kind: put.kind, choice: pick(random, put.choices).key };
  });
  const { revision } = content;
  const ids = asked.map((question) => question.id);
  return { id: own, at, topic: id, seed, count, revision, questions: ids, answers };
}

/** Null where this project can make none. */
function rightAnswer(content: Content, question: Question): Answer | null {
  const key = keyTo(question, content);
  switch (key?.kind) {
    case 'choose-one':
      return { kind: key.kind, choice: key.right };
    case 'choose-all':
      return { kind: key.kind, choices: key.right };
    case 'order':
      return { kind: key.kind, steps: key.right };
    case 'find-fault':
      return { kind: key.kind, zone: key.zones[0]!, fault: key.fault, card: key.cards[0] };
    case 'number': {
      const asks = question.kind === 'number' ? numberRule(question, content) : undefined;
      return asks ? { kind: key.kind, text: formatExact(middleOf(asks.rule)) } : null;
    }
    default:
      return null;
  }
}
