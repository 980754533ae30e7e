/** Somebody who sits an examination, and sends each answer again until it is acknowledged. */
import type { Database } from '#server/database/open-database.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Act } from '#server/people/member.ts';
import { freshMember } from '../server/attempts/company.ts';
import { answering, begun } from '../server/exams/sittings.ts';
import type { Company, Someone } from './signed-in.ts';

export type Sat = Awaited<ReturnType<typeof begun>> & { readonly by: Someone };

/** A sitting of an apprentice that has just begun. */
export async function sitting(records: Database, { company, apprentices }: Company): Promise<Sat> {
  const at = new Date().toISOString();
  const examiner = await freshMember(records.db, company, { roles: ['examiner'], name: 'Ed' });
  const by = apprentices[0]!;
  const member = { ...examiner, person: by.person, name: 'Ana', roles: ['apprentice'] as const };
  const act = (one: Act['by']): Act => ({ by: one, at });
  const office = act({ ...examiner, roles: ['office'] });
  const staff = { company, office, examiner: act(examiner), candidate: act(member) };
  return { ...(await begun(records, staff)), by };
}

const pause = (milliseconds: number) => new Promise((resolve) => setTimeout(resolve, milliseconds));

/** Goes through the questions over and over; `address` is asked anew for each request. */
export function startCandidate(company: string, { id, plan, by }: Sat, address: () => string) {
  const acknowledged = new Set<string>();
  const counts = { again: 0, double: 0 };
  let isOn = true;

  const tell = async (told: object): Promise<string | undefined> => {
    const answer = await fetch(`${address()}/company/${company}/exam/${id}/told`, {
      method: 'POST',
      headers: {
        'content-type': 'application/json',
        accept: 'application/json',
        origin: address(),
        cookie: by.cookie,
      },
      body: JSON.stringify({ told: [told] }),
      signal: AbortSignal.timeout(5000),
    });
    if (!answer.ok) return undefined;
    const { receipts } = (await answer.json()) as { readonly receipts: readonly object[] };
    const [receipt] = receipts;
    if (!receipt || !('as' in receipt)) throw new Error(JSON.stringify(receipt));
    return String(receipt.as);
  };

  const answer = async (sequence: number): Promise<void> => {
    const place = 1 + (sequence % plan.items.length);
    const own = freshId();
    const told = answering(plan, { place, sequence, id: own, isWrong: sequence % 2 === 0 });
    for (let tries = 0; ; tries += 1) {
      const as = await tell(told).catch((error: unknown) => {
        // Refused is not the same as killed.
        if (error instanceof Error && error.message.startsWith('{')) throw error;
        return undefined;
      });
      if (tries > 0) counts.again += 1;
      if (as === 'double') counts.double += 1;
      if (as) return void acknowledged.add(own);
      await pause(10);
    }
  };

  const running = (async () => {
    for (let sequence = 1; isOn; sequence += 1) {
      await answer(sequence);
      await pause(10);
    }
  })();
  const stop = () => {
    isOn = false;
    return running;
  };
  return { acknowledged, counts, stop };
}

/** The answers that the records hold of a sitting, by their ids, as often as they stand there. */
export async function answersKept({ db }: Database, { id }: Sat): Promise<readonly string[]> {
  const rows = await db
    .selectFrom('sitting_event')
    .select('detail')
    .where('sitting_id', '=', id)
    .where('kind', '=', 'answered')
    .execute();
  return rows.map(({ detail }) => (JSON.parse(detail) as { answer: { id: string } }).answer.id);
}
