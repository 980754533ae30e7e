import { parseArgs } from 'node:util';
import type { Content } from '#engine/compile/content.ts';
import { sequenceFrom } from '#engine/marking/attempt-from.ts';
import { randomFrom, shuffle } from '#engine/random.ts';
import { keyTo } from '#engine/written/key.ts';
import { madeQuestions } from '#engine/written/made/made-question.ts';
import { posed } from '#engine/written/posed.ts';
import type { Question } from '#engine/written/question.ts';
import { openContent } from '#server/content.ts';
import { MisuseError, type Command } from './command.ts';
import { print } from './print.ts';
import { refusals } from './refusals.ts';
import { siteAnswers } from './site-answers.ts';

/** Questions by seed, as they are posed, each with its key beside it. */
export const written: Command = {
  usage:
    '[TOPIC] --seed N [--count K] [--made METHOD [--site question=value,...]] [--content FOLDER]',
  summary: 'written questions with their keys: of a topic, of all, or made from a method',
  run: (args, streams) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: {
        seed: { type: 'string' },
        count: { type: 'string', default: '1' },
        made: { type: 'string' },
        site: { type: 'string', default: '' },
        content: { type: 'string' },
      },
      allowPositionals: true,
    });
    const [topic, ...others] = positionals;
    if (others.length > 0) throw new MisuseError('Name one topic, or none for all of them.');
    if (!values.seed) throw new MisuseError('Give a seed: --seed 7.');
    if (topic && values.made) throw new MisuseError('Name a topic, or a method to make them from.');
    const { seed } = values;
    const count = countFrom(values.count);
    const content = openContent(values.content);
    const questions = values.made
      ? madeFrom(content, values.made, values.site, seed, count)
      : shuffle(randomFrom(`${seed}/written`), questionsIn(content, topic)).slice(0, count);
    print(
      streams,
      questions.map((question) => ({
        id: question.id,
        topic: question.topic,
        difficulty: question.difficulty,
        source: question.source,
        of: question.of.map(({ method, step }) => `${method}/${step}`),
        posed: posed(question, seed, content),
        key: keyTo(question, content),
      })),
    );
    return 0;
  },
};

const mostQuestions = 1000;

function countFrom(count: string): number {
  const many = Number(count);
  if (Number.isInteger(many) && many >= 1 && many <= mostQuestions) return many;
  throw new MisuseError(`--count takes a whole number from 1 to ${mostQuestions}, not ${count}.`);
}

function questionsIn({ topics }: Content, id: string | undefined): readonly Question[] {
  const all = [...topics.values()];
  if (id === undefined) return all.flatMap(({ questions }) => questions);
  const topic = all.find((known) => known.id === id);
  if (topic) return topic.questions;
  throw new MisuseError(`There is no topic "${id}". There are: ${[...topics.keys()].join(', ')}.`);
}

function madeFrom(
  content: Content,
  method: string,
  site: string,
  seed: string,
  count: number,
): readonly Question[] {
  const sequence = sequenceFrom({ method, site: siteAnswers(site) }, content);
  if (!sequence.ok) throw new MisuseError(refusals(sequence.error));
  const { patterns } = content;
  if (!patterns) throw new MisuseError('The content has no patterns to make questions with.');
  return madeQuestions({ sequence: sequence.value, patterns }, seed, count);
}
