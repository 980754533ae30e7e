/** What is sent while measuring: a year's attempts of simulated learners, by people of one company. */
import { openContent } from '#server/content.ts';
import { demoAttempts } from '#server/demo/attempts.ts';
import type { Database } from '#server/database/open-database.ts';
import { signedInCompany } from '../../faults/signed-in.ts';
import type { Shot } from './client.ts';

const people = 64;
const shots = 1000;
const today = Date.UTC(2030, 4, 1);
const mark = 'identifier';

/** Each attempt in the two halves of its body. */
const bodies = (): readonly Shot['body'][] => {
  const content = openContent();
  return [-0.5, 0.3, 1.1, 1.9].flatMap((ability) => {
    const learner = { seed: `bench/${ability}`, ability, works: [], left: today };
    return [...demoAttempts(content, learner, today)].map(({ sent: { kind, kept } }) => {
      const [before = '', after = ''] = JSON.stringify({
        attempts: [{ kind, kept: { ...kept, id: mark } }],
      }).split(mark);
      return [before, after] as const;
    });
  });
};

/** One of everybody in turn; the records may be opened by nobody else meanwhile. */
export async function submissionsTo(records: Database): Promise<readonly Shot[]> {
  const { company, apprentices } = await signedInCompany(records, people);
  const sent = bodies();
  const path = `/company/${company}/attempts`;
  return Array.from({ length: shots }, (_, turn) => ({
    path,
    headers: {
      'content-type': 'application/json',
      accept: 'application/json',
      cookie: apprentices[turn % people]!.cookie,
    },
    body: sent[turn % sent.length]!,
  }));
}
