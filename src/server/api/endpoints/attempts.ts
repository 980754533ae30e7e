import { z } from 'zod';
import { fault, ok } from '#engine/result.ts';
import * as kept from '../../attempts/kept-attempts.ts';
import { endpoint, id, instant, most, pageOf } from '../endpoint.ts';

/** What was sent at the same moment by another way may be kept a little later, and would be passed over. */
const settledSeconds = 10;

const attempt = z
  .strictObject({
    id,
    person: id,
    work: id.nullable().describe('The piece of an assignment that it was for.'),
    kind: z.enum(['mockup', 'takeoff', 'written']),
    about: z.string().describe('The method, the family of problems or the topic.'),
    finishedAt: instant.describe('By the clock of the device that it was played on.'),
    receivedAt: instant,
    score: z.number().min(0).max(100),
    outcome: z.enum(['accept', 'rework', 'tear-out', 'right', 'partly right', 'not right']),
  })
  .meta({ id: 'Attempt' });

export const attempts = endpoint({
  id: 'listAttempts',
  route: '/api/attempts',
  method: 'GET',
  scope: 'attempts.read',
  summary: `Results of attempts, in the order in which they came, from ${settledSeconds} seconds after they did.`,
  query: z.strictObject({
    person: id.optional().describe('Of this person alone.'),
    after: id.optional().describe('The id of the last one that you have.'),
    most,
  }),
  answer: pageOf(attempt),
  async reply({ db, bearer: { company }, at }, { query }) {
    const upTo = new Date(Date.parse(at) - settledSeconds * 1000).toISOString();
    const page = await kept.inOrder(db, company, { ...query, upTo });
    if (!page) return fault({ code: 'CURSOR_UNKNOWN' });
    const items = page.found.map((row) => ({
      ...row,
      kind: row.kind as 'mockup',
      outcome: row.outcome as 'accept',
    }));
    return ok({ items, next: page.next ?? null });
  },
});
