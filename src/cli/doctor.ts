import { parseArgs } from 'node:util';
import { examine } from '#server/operations/doctor.ts';
import type { Command } from './command.ts';
import { print } from './print.ts';

/** Looks over the machine, the settings and the records; changes nothing. */
export const doctor: Command = {
  usage: '',
  summary: 'checks machine, settings and records; says how to mend what is not well',
  run: async (args, streams) => {
    parseArgs({ args: [...args] });
    const findings = await examine(process.env, new Date());
    print(streams, findings);
    const faults = findings.filter(({ state }) => state === 'fault');
    for (const { check, found, cure } of faults) {
      streams.beside(`${check}: ${found}\n  ${cure}\n`);
    }
    if (faults.length === 0) streams.beside('All is well.\n');
    return faults.length > 0 ? 1 : 0;
  },
};
