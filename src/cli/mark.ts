import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { type AttemptFault, refusal } from '#engine/marking/attempt-file.ts';
import { attemptFrom } from '#engine/marking/attempt-from.ts';
import { reportOf } from '#engine/marking/report.ts';
import { review } from '#engine/marking/review.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { openContent } from '#server/content.ts';
import { MisuseError, type Command } from './command.ts';
import { refusals } from './refusals.ts';

/** Marks one attempt, kept as JSON; `-` reads it from the standard input. */
export const mark: Command = {
  usage: 'ATTEMPT.json|- [--content FOLDER]',
  summary: 'the review of an attempt',
  run: (args, { out, beside }) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { content: { type: 'string' } },
      allowPositionals: true,
    });
    const [file, ...others] = positionals;
    if (!file || others.length > 0) throw new MisuseError('Name one attempt.');
    const input = jsonFrom(readText(file));
    const attempt = input.ok ? attemptFrom(input.value, openContent(values.content)) : input;
    const say = (result: unknown) => out(`${JSON.stringify(result, undefined, 2)}\n`);
    if (!attempt.ok) {
      say({ faults: attempt.error });
      beside(`${refusals(attempt.error)}Nothing was marked.\n`);
      return 1;
    }
    say(reportOf(attempt.value, review(attempt.value)));
    return 0;
  },
};

function jsonFrom(text: string): Result<unknown, readonly AttemptFault[]> {
  try {
    return ok(JSON.parse(text));
  } catch (error) {
    const said = `This is no JSON: ${(error as Error).message}.`;
    return fault([refusal('NOT_AN_ATTEMPT', '', said)]);
  }
}

function readText(file: string): string {
  try {
    return readFileSync(file === '-' ? 0 : file, 'utf8');
  } catch (error) {
    throw new MisuseError(`${file} cannot be read: ${(error as Error).message}`);
  }
}
