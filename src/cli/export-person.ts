import { writeFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { freshFile } from '#server/operations/fresh-file.ts';
import { companyOf } from '#server/people/erasure.ts';
import { exportPerson as everything } from '#server/people/export.ts';
import { type Command, MisuseError } from './command.ts';
import { print } from './print.ts';
import { withRecords } from './records.ts';

/** For whoever asks what is kept about them. */
export const exportPerson: Command = {
  usage: 'ID FILE',
  summary: 'all that is kept about a person, as JSON in a new file',
  run: (args, streams) => {
    const { positionals } = parseArgs({ args: [...args], allowPositionals: true });
    const [person, file, ...others] = positionals;
    if (!person || !file || others.length > 0) {
      throw new MisuseError("Name a person's id and one file to write.");
    }
    return withRecords(async ({ db }) => {
      const company = await companyOf(db, person);
      const kept = company && (await everything(db, company, person));
      if (!kept) {
        streams.beside(`There is no person ${person}.\n`);
        return 1;
      }
      await freshFile(file, (temporary) =>
        writeFile(temporary, `${JSON.stringify(kept, undefined, 2)}\n`),
      );
      print(streams, { person, company, file, attempts: kept.attempts.length });
      return 0;
    });
  },
};
