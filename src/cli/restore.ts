import { parseArgs } from 'node:util';
import { checkRestore, restore as put } from '#server/operations/restore.ts';
import { type Command, type ExitCode, MisuseError } from './command.ts';
import { print } from './print.ts';
import { settingsHere } from './records.ts';

/** Without --yes it only looks whether it could. */
export const restore: Command = {
  usage: 'FILE [--yes] [--replace] [--despite-faults]',
  summary: 'puts a backup in the place of the records; the old ones are kept aside',
  run: async (args, streams): Promise<ExitCode> => {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: {
        yes: { type: 'boolean', default: false },
        replace: { type: 'boolean', default: false },
        'despite-faults': { type: 'boolean', default: false },
      },
      allowPositionals: true,
    });
    const [file, ...others] = positionals;
    if (!file || others.length > 0) throw new MisuseError('Name one file to restore.');
    const settings = settingsHere();
    const how = { replace: values.replace, despiteFaults: values['despite-faults'] };
    if (!values.yes) {
      const faults = await checkRestore(settings.place, file, how);
      print(streams, { restored: false, faults });
      streams.beside('It can be restored. Nothing was changed: add --yes to do it.\n');
      return 0;
    }
    const { aside, faults } = await put(settings, file, { ...how, at: new Date() });
    print(streams, { restored: true, faults, aside: aside ?? null });
    if (aside) streams.beside(`What was there before is kept in ${aside}\n`);
    return 0;
  },
};
