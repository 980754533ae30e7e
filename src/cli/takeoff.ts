import { parseArgs } from 'node:util';
import type { Content } from '#engine/compile/content.ts';
import type { PartId } from '#engine/takeoff/family.ts';
import { instanceOf, type Instance } from '#engine/takeoff/instance.ts';
import { markAnswers, type Mark } from '#engine/takeoff/marks.ts';
import { markReportOf, reportOf } from '#engine/takeoff/report.ts';
import { takeoffOf, type Takeoff } from '#engine/takeoff/takeoff.ts';
import { openContent } from '#server/content.ts';
import { MisuseError, type Command } from './command.ts';

/**
 * Problems of a family by seed, with answers, slips and working; or one problem with the verdict on the
 * answers to its parts, that on the last answer given beside them.
 */
export const takeoff: Command = {
  usage: 'FAMILY --seed N [--count K] [--answer "..." for each part] [--content FOLDER]',
  summary: 'computed problems with their answers and working, or the verdict on an answer',
  run: (args, { out, beside }) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: {
        seed: { type: 'string' },
        count: { type: 'string', default: '1' },
        answer: { type: 'string', multiple: true },
        content: { type: 'string' },
      },
      allowPositionals: true,
    });
    const [id, ...others] = positionals;
    if (!id || others.length > 0) throw new MisuseError('Name one family of problems.');
    if (!values.seed) throw new MisuseError('Give a seed: --seed 7.');
    const seeds = seedsFrom(values.seed, values.count);
    if (values.answer && seeds.length > 1) throw new MisuseError('An answer is to one problem.');
    const family = familyIn(openContent(values.content), id);
    const problems = seeds.map((seed) => [seed, problem(family, seed)] as const);
    const [first] = problems;
    if (values.answer && first) {
      const marks = markedBy(first[1], values.answer);
      const reports = marks.map(markReportOf);
      const { verdict, say } = reports[values.answer.length - 1]!;
      const report = { ...reportOf(first[1], first[0]), marks: reports, verdict, say };
      out(`${JSON.stringify(report, undefined, 2)}\n`);
      const unread = marks.flatMap(({ reading }) => (reading?.ok === false ? [reading.error] : []));
      unread.forEach(({ message }) => beside(`${message.en}\n`));
      return unread.length > 0 ? 1 : 0;
    }
    const reports = problems.map(([seed, instance]) => reportOf(instance, seed));
    out(`${JSON.stringify(reports, undefined, 2)}\n`);
    return 0;
  },
};

const mostProblems = 10_000;

/** A seed that is a number counts on; any other gets the problem's place beside it. */
function seedsFrom(seed: string, count: string): readonly string[] {
  const many = Number(count);
  if (!Number.isInteger(many) || many < 1 || many > mostProblems) {
    throw new MisuseError(`--count takes a whole number from 1 to ${mostProblems}, not ${count}.`);
  }
  const isNumber = /^\d{1,15}$/.test(seed);
  return Array.from({ length: many }, (_, place) =>
    isNumber ? String(Number(seed) + place) : place === 0 ? seed : `${seed}/${place + 1}`,
  );
}

function familyIn(content: Content, id: string): Takeoff {
  const family = [...content.takeoffs.values()].find((known) => known.id === id);
  const sheet = family && content.dataSheets.get(family.dataSheet);
  if (!family || !sheet) {
    const known = [...content.takeoffs.keys()].join(', ');
    throw new MisuseError(`There is no family "${id}". There are: ${known}.`);
  }
  const found = takeoffOf(family, sheet);
  if (!found.ok) throw new MisuseError(found.error.message);
  return found.value;
}

function problem(family: Takeoff, seed: string): Instance {
  const found = instanceOf(family, seed);
  if (!found.ok) {
    throw new MisuseError(`No good problem was found for the seed ${seed}; try another.`);
  }
  return found.value;
}

/** The answers in the order of the parts. */
function markedBy(instance: Instance, answers: readonly string[]): readonly Mark[] {
  const { parts } = instance;
  if (answers.length > parts.length) {
    throw new MisuseError(`The problem has ${parts.length} parts, and here are more answers.`);
  }
  const written = new Map<PartId, { readonly text: string }>();
  answers.forEach((text, place) => written.set(parts[place]!.part.id, { text }));
  return markAnswers(instance, written);
}
