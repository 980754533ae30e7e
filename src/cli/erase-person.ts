import { parseArgs } from 'node:util';
import { openDatabase } from '#server/database/open-database.ts';
import { companyOf, erase, type ErasureFault } from '#server/people/erasure.ts';
import { type Command, MisuseError } from './command.ts';
import { print } from './print.ts';
import { requireRecords, settingsHere } from './records.ts';

const reasons: Readonly<Record<ErasureFault, string>> = {
  UNKNOWN_PERSON: 'There is no such person.',
  LAST_OFFICE:
    'This is the last person who keeps the office of the company. Give the role to another first.',
};

/** What is done by whoever may run commands on the server has nobody's name in the audit trail. */
export const erasePerson: Command = {
  usage: 'ID --yes',
  summary: 'takes out who a person is; what they did stays, under an id for nobody',
  run: async (args, streams) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { yes: { type: 'boolean', default: false } },
      allowPositionals: true,
    });
    const [person, ...others] = positionals;
    if (!person || others.length > 0) throw new MisuseError("Name one person's id.");
    if (!values.yes) throw new MisuseError('This cannot be undone. Add --yes to do it.');
    const settings = settingsHere();
    await requireRecords(settings).close();
    const { db, close } = openDatabase(settings.place);
    try {
      const company = await companyOf(db, person);
      const doer = { company: company ?? '', actor: null, at: new Date().toISOString() };
      const erased = await erase(db, doer, person);
      if (!erased.ok) {
        streams.beside(`${reasons[erased.error]}\n`);
        return 1;
      }
      print(streams, { person, company, erased: true, before: erased.value === 'ERASED_BEFORE' });
      return 0;
    } finally {
      await close();
    }
  },
};
