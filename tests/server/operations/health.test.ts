import { afterAll, expect, test } from 'vitest';
import { openDatabase } from '#server/database/open-database.ts';
import { health } from '#server/operations/health.ts';
import { startCluster } from '../cluster.ts';
import { freshRecords } from '../records.ts';

const cluster = startCluster();
let isStopped = false;
const stop = () => {
  if (!isStopped) cluster.stop();
  isStopped = true;
};
afterAll(stop);

test('health is good while PostgreSQL answers, and 503 once it is stopped', async () => {
  const { db, close } = openDatabase({ url: cluster.urlOf('postgres') });
  const asked = () => health(() => Promise.resolve(db));
  const good = await asked();
  expect([good.status, await good.json()]).toEqual([200, { health: 'good' }]);
  stop();
  const bad = await asked();
  expect([bad.status, await bad.json()]).toEqual([503, { health: 'no records' }]);
  expect(bad.headers.get('cache-control')).toBe('no-store');
  await close();
});

test('health is good with a file, and 503 where the records cannot be opened', async () => {
  const records = await freshRecords('sqlite');
  expect((await health(() => Promise.resolve(records.db))).status).toBe(200);
  await records.drop();
  expect((await health(() => Promise.resolve(records.db))).status).toBe(503);
  expect((await health(() => Promise.reject(new Error('no folder')))).status).toBe(503);
});
