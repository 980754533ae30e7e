import { parseArgs } from 'node:util';
import { list, rotate } from '#server/certificates/signing-keys.ts';
import { KeyFileError } from '#server/certificates/key-file.ts';
import { openDatabase } from '#server/database/open-database.ts';
import { type Command, MisuseError } from './command.ts';
import { print } from './print.ts';
import { requireRecords, settingsHere, withRecords } from './records.ts';

/** Signs with another key from now on, on every process that shares the folder. */
async function rotateHere() {
  const settings = settingsHere();
  await requireRecords(settings).close();
  const { db, close } = openDatabase(settings.place);
  try {
    return await rotate(db, settings.keys, new Date().toISOString());
  } finally {
    await close();
  }
}

export const keys: Command = {
  usage: 'list | rotate',
  summary:
    'the keys that certificates are signed with; what an old one signed is verified as before',
  run: async (args, streams) => {
    const { positionals } = parseArgs({ args: [...args], allowPositionals: true });
    const [asked, ...others] = positionals;
    if ((asked !== 'list' && asked !== 'rotate') || others.length > 0) {
      throw new MisuseError('Say list or rotate.');
    }
    try {
      print(
        streams,
        asked === 'list' ? await withRecords(({ db }) => list(db)) : await rotateHere(),
      );
      return 0;
    } catch (error) {
      if (!(error instanceof KeyFileError)) throw error;
      streams.beside(`${error.message}\n`);
      return 1;
    }
  },
};
