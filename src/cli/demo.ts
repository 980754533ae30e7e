import { parseArgs } from 'node:util';
import { openContent } from '#server/content.ts';
import { demoCompany, makeDemo } from '#server/demo/make-demo.ts';
import { removeDemo } from '#server/demo/remove-demo.ts';
import { migrate, openDatabase } from '#server/database/open-database.ts';
import { openAuth } from '#server/logins/auth.ts';
import type { Command, ExitCode } from './command.ts';
import { print } from './print.ts';
import { settingsHere } from './records.ts';

/** Makes the invented company, or with `--remove` takes it away with everything of it. */
export const demo: Command = {
  usage: '[--remove]',
  summary: 'makes an invented company with people and a year of practice, to look around in',
  run: async (args, streams): Promise<ExitCode> => {
    const { values } = parseArgs({
      args: [...args],
      options: { remove: { type: 'boolean', default: false } },
    });
    const records = openDatabase(settingsHere().place);
    try {
      await migrate(records);
      const there = await demoCompany(records.db);
      if (values.remove) {
        if (there) await removeDemo(records.db, there);
        print(streams, { removed: there ?? null });
        return 0;
      }
      const made = await makeDemo(records, await openAuth(records), openContent(), {
        now: new Date(),
        tell: (done, all) => streams.beside(`${done} of ${all} people\n`),
      });
      if (!made.ok) {
        streams.beside('The invented company is there already. --remove takes it away.\n');
        return 1;
      }
      print(streams, made.value);
      return 0;
    } finally {
      await records.close();
    }
  },
};
