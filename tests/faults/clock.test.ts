import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { openDatabase } from '#server/database/open-database.ts';
import { checkRecords } from '#server/operations/records-check.ts';
import { freshRecords, kinds } from '../server/records.ts';
import { startServer } from './server-process.ts';
import { makeCrew, post, signedInCompany, submission } from './signed-in.ts';

describe.each(kinds)('%s', (kind) => {
  test('a clock set back stops no session, no attempt, no try at a password and no audit trail', async () => {
    const records = await freshRecords(kind);
    const company = await signedInCompany(records, 1);
    await records.close();
    const folder = mkdtempSync(join(tmpdir(), 'underlap-clock-'));
    const back = join(folder, 'back');
    const server = await startServer(records.place, {
      folder: 'folder' in records.place ? records.place.folder : folder,
      node: ['--import', join(import.meta.dirname, 'clock-back.ts')],
      env: { CLOCK_BACK: back },
    });
    try {
      const { cookie, email } = company.apprentices[0]!;
      const by = { company: company.company, cookie };
      const signIn = (password: string) =>
        fetch(`${server.address}/sign-in`, {
          method: 'POST',
          redirect: 'manual',
          headers: {
            'content-type': 'application/x-www-form-urlencoded',
            accept: 'text/html',
            origin: server.address,
          },
          body: new URLSearchParams({ name: email, password }).toString(),
        }).then(({ status }) => status);

      expect((await post(server.address, by, [submission(0, company.work)])).status).toBe(200);
      await makeCrew(server.address, company, 'Before');
      for (let tries = 0; tries < 11; tries += 1) await signIn('a wrong password');
      expect(await signIn('a long password')).toBe(429);

      writeFileSync(back, '');
      expect(await signIn('a long password')).toBe(303);
      const answer = await post(server.address, by, [submission(0, company.work)]);
      expect(await answer.json()).toMatchObject({ receipts: [{ kept: 'now' }] });
      const made = await makeCrew(server.address, company, 'After');
      expect(await made.json()).toMatchObject({ type: 'success' });
    } finally {
      await server.kill();
    }
    const opened = openDatabase(records.place);
    expect((await checkRecords(opened)).faults).toEqual([]);
    const entries = await opened.db
      .selectFrom('audit_entry')
      .select('at')
      .where('action', '=', 'make crew')
      .orderBy('place')
      .execute();
    // It was set back, and the trail says so.
    expect(entries).toHaveLength(2);
    expect(entries[1]!.at < entries[0]!.at).toBe(true);
    const progress = await opened.db.selectFrom('progress').select('tries').execute();
    expect(progress).toEqual([{ tries: 2 }]);
    await opened.close();
    await records.drop().catch(() => undefined);
  });
});
