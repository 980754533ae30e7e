import { parseArgs } from 'node:util';
import { migrate as bring, openDatabase } from '#server/database/open-database.ts';
import type { Command, ExitCode } from './command.ts';
import { print } from './print.ts';
import { settingsHere } from './records.ts';

/** Brings the records up to this version, as the server does when it starts. */
export const migrate: Command = {
  usage: '',
  summary: 'brings the tables up to this version; says what was taken',
  run: async (args, streams): Promise<ExitCode> => {
    parseArgs({ args: [...args] });
    const records = openDatabase(settingsHere().place);
    try {
      print(streams, { taken: await bring(records) });
      return 0;
    } finally {
      await records.close();
    }
  },
};
