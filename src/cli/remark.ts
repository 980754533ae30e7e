import { parseArgs } from 'node:util';
import { remark as remarkAll } from '#server/attempts/remark.ts';
import { openContent } from '#server/content.ts';
import type { Command } from './command.ts';
import { print } from './print.ts';
import { withRecords } from './records.ts';

/** Marks every attempt with the content of today; `--trial` says what would change and writes nothing. */
export const remark: Command = {
  usage: '[--trial] [--content FOLDER]',
  summary: 'marks all attempts again after the content was mended, and says what changed',
  run: async (args, streams) => {
    const { values } = parseArgs({
      args: [...args],
      options: { trial: { type: 'boolean', default: false }, content: { type: 'string' } },
    });
    const content = openContent(values.content);
    const report = await withRecords((records) =>
      remarkAll(records, content, {
        at: new Date().toISOString(),
        isTrial: values.trial,
        tell: (done, all) => {
          if (done % 100 === 0 || done === all) streams.beside(`${done} of ${all} people\n`);
        },
      }),
    );
    print(streams, report);
    return report.unreadable.length > 0 ? 1 : 0;
  },
};
