import { parseArgs } from 'node:util';
import { trailFaults, trails } from '#server/operations/records-check.ts';
import type { Command } from './command.ts';
import { print } from './print.ts';
import { withRecords } from './records.ts';

/** Reads the audit trail of every company; its length and hash are worth keeping elsewhere. */
export const verify: Command = {
  usage: '',
  summary: 'reads the audit trail of every company: length, hash of its head, faults',
  run: (args, streams) => {
    parseArgs({ args: [...args] });
    return withRecords(async ({ db }) => {
      const found = await trails(db);
      print(streams, found);
      const faults = trailFaults(found);
      faults.forEach((fault) => streams.beside(`${fault}\n`));
      return faults.length > 0 ? 1 : 0;
    });
  },
};
