import { parseArgs } from 'node:util';
import { sequenceFrom } from '#engine/marking/attempt-from.ts';
import { countOrders } from '#engine/method/count-orders.ts';
import { openContent } from '#server/content.ts';
import { MisuseError, type Command } from './command.ts';
import { refusals } from './refusals.ts';
import { siteAnswers } from './site-answers.ts';

/** How many correct orders the steps of a method have on one wall, and how many states in between. */
export const orders: Command = {
  usage: 'METHOD [--site question=value,...] [--content FOLDER]',
  summary: 'how many correct orders the steps have on that wall',
  run: (args, { out, beside }) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { site: { type: 'string', default: '' }, content: { type: 'string' } },
      allowPositionals: true,
    });
    const [method, ...others] = positionals;
    if (!method || others.length > 0) throw new MisuseError('Name one method.');
    const site = siteAnswers(values.site);
    const sequence = sequenceFrom({ method, site }, openContent(values.content));
    if (!sequence.ok) throw new MisuseError(refusals(sequence.error));
    const counted = countOrders(sequence.value.order);
    if (!counted.ok) {
      beside('These steps have more states in between than can be counted.\n');
      return 1;
    }
    const { orders: found, ideals } = counted.value;
    const steps = sequence.value.steps.length;
    out(`${JSON.stringify({ steps, orders: String(found), ideals: Number(ideals) })}\n`);
    return 0;
  },
};
