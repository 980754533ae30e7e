import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { openDatabase } from '#server/database/open-database.ts';
import { freshRecords, kinds } from '../server/records.ts';
import { answersKept, sitting, startCandidate } from './candidate.ts';
import { reckon } from './reckoning.ts';
import { startSenders } from './senders.ts';
import { type Server, startServer } from './server-process.ts';
import { type Company, makeCrew, signedInCompany } from './signed-in.ts';

const kills = 50;
const pause = (milliseconds: number) => new Promise((resolve) => setTimeout(resolve, milliseconds));

/** Makes one crew after the other, to a new name each time; returns those that were acknowledged. */
function startOffice(company: Company, address: () => string) {
  const made: string[] = [];
  let isOn = true;
  const running = (async () => {
    for (let n = 1; isOn; n += 1) {
      const name = `Crew ${n}`;
      const isMade = await makeCrew(address(), company, name, 5000)
        .then(async (answer) => ((await answer.json()) as { type?: string }).type !== 'error')
        .catch(() => false);
      if (isMade) made.push(name);
      await pause(20);
    }
  })();
  const stop = () => {
    isOn = false;
    return running;
  };
  return { made, stop };
}

describe.each(kinds)('%s', (kind) => {
  test(`of a server killed ${kills} times amid submissions and an examination, nothing acknowledged is lost or doubled`, async () => {
    const records = await freshRecords(kind);
    const company = await signedInCompany(records);
    const sat = await sitting(records, company);
    await records.close();
    const folder =
      'folder' in records.place ? records.place.folder : mkdtempSync(join(tmpdir(), 'underlap-f-'));
    const start = () => startServer(records.place, { folder, env: { LOG_LEVEL: 'error' } });

    let server: Server = await start();
    const stream = startSenders(company, () => server.address);
    const office = startOffice(company, () => server.address);
    const exam = startCandidate(company.company, sat, () => server.address);
    const starts: number[] = [];
    const acks: number[] = [];
    try {
      for (let killed = 0; killed < kills; killed += 1) {
        const before = stream.acknowledged.size;
        // The next one loads meanwhile; it opens the records only when it is first asked for them.
        const next = start();
        while (stream.acknowledged.size === before) await pause(5);
        // Not always at the same point of what it does.
        const [ready] = await Promise.all([next, pause((killed * 37) % 90)]);
        await server.kill();
        acks.push(stream.acknowledged.size - before);
        server = ready;
        starts.push(ready.milliseconds);
      }
      await Promise.all([stream.stop(), office.stop(), exam.stop()]);
    } finally {
      await server.kill();
    }

    const opened = openDatabase(records.place);
    try {
      await reckon(opened, company, stream.acknowledged);
      expect((await answersKept(opened, sat)).toSorted(), 'answers of an examination').toEqual(
        [...exam.acknowledged].toSorted(),
      );
      const crews = await opened.db.selectFrom('crew').select('name').execute();
      const names = crews.map(({ name }) => name);
      expect(new Set(names).size).toBe(names.length);
      expect(names).toEqual(expect.arrayContaining(office.made));
      const entries = await opened.db
        .selectFrom('audit_entry')
        .select('id')
        .where('action', '=', 'make crew')
        .execute();
      expect(entries).toHaveLength(names.length);
    } finally {
      await opened.close();
    }
    starts.sort((a, b) => a - b);
    console.log(
      `${kind}: ${kills} kills, ${stream.acknowledged.size} acknowledged ` +
        `(fewest between kills ${Math.min(...acks)}), ${stream.counts.again} sent again of which ` +
        `${stream.counts.before} kept before, ${office.made.length} crews, ` +
        `${exam.acknowledged.size} answers of an examination (${exam.counts.again} sent again), 0 lost; ` +
        `start ${starts[starts.length >> 1]} ms (median)`,
    );
    expect(Math.min(...acks)).toBeGreaterThan(0);
    expect(office.made.length).toBeGreaterThan(0);
    expect(exam.acknowledged.size).toBeGreaterThan(kills);
    await records.drop().catch(() => undefined);
  });
});
