import { parseArgs } from 'node:util';
import { backup as write } from '#server/operations/backup.ts';
import { type Command, MisuseError } from './command.ts';
import { print } from './print.ts';
import { requireRecords, settingsHere } from './records.ts';

/** Copies the records into one file while the server goes on, and reads the copy through. */
export const backup: Command = {
  usage: 'FILE',
  summary: 'the records in one new file, read through after it is written',
  run: async (args, streams) => {
    const { positionals } = parseArgs({ args: [...args], allowPositionals: true });
    const [file, ...others] = positionals;
    if (!file || others.length > 0) throw new MisuseError('Name one file to write.');
    const settings = settingsHere();
    await requireRecords(settings).close();
    const made = await write(settings.place, file);
    print(streams, made);
    if (made.faults.length === 0) return 0;
    streams.beside(`${file} was written, but the records have faults:\n`);
    made.faults.forEach((fault) => streams.beside(`  ${fault}\n`));
    return 1;
  },
};
