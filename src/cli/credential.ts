import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { checkCredential } from '#server/certificates/check-credential.ts';
import { type Command, MisuseError } from './command.ts';
import { print } from './print.ts';
import { settingsHere, withRecords } from './records.ts';

function textIn(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    throw new MisuseError(`${file} cannot be read (${(error as NodeJS.ErrnoException).code}).`);
  }
}

/** Of this server's own certificates: their keys and their states are read from its records. */
export const credential: Command = {
  usage: 'FILE [--origin https://underlap.example]',
  summary: 'whether a credential file is one of ours, unchanged, and holds today',
  run: async (args, streams) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { origin: { type: 'string' } },
      allowPositionals: true,
    });
    const [file, ...others] = positionals;
    if (!file || others.length > 0) throw new MisuseError('Name one file.');
    const origin = values.origin ?? settingsHere().origin;
    if (!origin) throw new MisuseError('Say under which address it was made: --origin or ORIGIN.');
    const text = textIn(file);
    const at = new Date().toISOString();
    const checked = await withRecords(({ db }) => checkCredential(db, { origin, at }, text));
    print(
      streams,
      checked.ok ? { valid: true, ...checked.value } : { valid: false, because: checked.error },
    );
    return checked.ok ? 0 : 1;
  },
};
