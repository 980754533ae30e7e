/**
 * A family worked with the dimensions of a real job: the list of what it takes, with the working. It
 * computes with the formulas of the practice problems and no others.
 */
import { fault, ok, type Result } from '#engine/result.ts';
import type { Text } from '#engine/text.ts';
import type { GivenId, PartId } from './family.ts';
import { inEach } from './fill-text.ts';
import { instanceFrom, valueOf, type Instance, type Solved } from './instance.ts';
import { readEntry, type JobFault } from './job-entry.ts';
import { filledText, problemOf, writeAnswer, type Problem } from './problem.ts';
import { truth } from './slate.ts';
import { slateOf, type Takeoff } from './takeoff.ts';
import { namesIn } from './terms.ts';
import type { WorkedLine } from './worked-line.ts';
import { workedSolution } from './worked.ts';

export type JobSheet = {
  readonly instance: Instance;
  readonly problem: Problem;
  readonly lines: readonly JobLine[];
};

export type JobLine = {
  readonly part: PartId;
  readonly name: Text;
  readonly amount: Text;
  /** Before rounding, where that is something else. */
  readonly exact: Text | undefined;
  readonly working: readonly WorkedLine[];
};

/** Every fault of the entries at once; what must hold between them is asked when all can be read. */
export function jobSheet(
  takeoff: Takeoff,
  entries: ReadonlyMap<GivenId, string>,
): Result<JobSheet, readonly JobFault[]> {
  const slate = slateOf(takeoff);
  const faults: JobFault[] = [];
  for (const given of takeoff.family.givens) {
    if (given.from.kind === 'computed' || given.from.kind === 'sheet') continue;
    const read = readEntry(given, entries.get(given.id));
    if (read.ok) slate.values[given.term.place] = valueOf(read.value);
    else faults.push(read.error);
  }
  if (faults.length > 0) return fault(faults);
  try {
    const broken = takeoff.family.needs.filter(({ that }) => !truth(that.root, slate));
    if (broken.length === 0) return ok(sheetOf(instanceFrom(takeoff, slate)));
    return fault(
      broken.map(({ that, say }) => need(filledText({ takeoff, slate }, say), namesIn(that))),
    );
  } catch (error) {
    if (error instanceof RangeError) return fault([need(noSense, [])]);
    throw error;
  }
}

const need = (message: Text, names: ReturnType<typeof namesIn>): JobFault => ({
  code: 'NEED',
  given: undefined,
  among: names.flatMap(({ op, name }) => (op === 'given' ? [name as GivenId] : [])),
  message,
});

const noSense: Text = {
  en: 'These numbers do not go together: some length between them is nothing. Check them.',
  es: 'Estos números no van juntos: alguna medida entre ellos queda en nada. Revíselos.',
};

const sheetOf = (instance: Instance): JobSheet => ({
  instance,
  problem: problemOf(instance),
  lines: instance.parts.map((solved) => ({
    part: solved.part.id,
    name: solved.part.name,
    amount: inEach((language) => writeAnswer(solved.part.answer, solved.right, language)),
    exact: exactOf(solved),
    working: workedSolution(instance, solved.part.id),
  })),
});

function exactOf({ part, exact, right }: Solved): Text | undefined {
  if (typeof exact === 'boolean' || typeof right === 'boolean') return undefined;
  if (exact.value.equals(right.value)) return undefined;
  return inEach((language) => writeAnswer(part.answer, exact, language, true));
}
