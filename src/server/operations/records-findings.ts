/** What a server needs of its records. */
import { sql } from 'kysely';
import {
  type Database,
  type Db,
  missingMigrations,
  openExisting,
  unknownMigrations,
} from '../database/open-database.ts';
import type { Settings } from '../settings.ts';
import { type Finding, ill, tallied, well } from './finding.ts';
import { pageFaults, referenceFaults, trailFaults, trails } from './records-check.ts';

const restore = 'Keep a copy of the records as they are, then restore the last backup.';

/** Instants that the server itself wrote, the latest; undefined where there is none. */
async function newestInstant(db: Db): Promise<string | undefined> {
  const { rows } = await sql<{ at: string | null }>`
    select max(at) as at from audit_entry union all select max(received_at) from attempt`.execute(
    db,
  );
  return rows
    .map(({ at }) => at)
    .filter((at) => at !== null)
    .sort()
    .at(-1);
}

/** Two machines that share records may differ by this much. */
const clockMilliseconds = 60_000;

export function clockCheck(newest: string | undefined, now: Date): Finding {
  const ahead = newest === undefined ? 0 : Date.parse(newest) - now.getTime();
  return ahead <= clockMilliseconds
    ? well('clock', now.toISOString())
    : ill(
        'clock',
        `it says ${now.toISOString()}, before the newest record (${newest})`,
        'Set the clock of this machine, best by NTP.',
      );
}

async function migrationsCheck(records: Database): Promise<Finding> {
  const newer = await unknownMigrations(records);
  if (newer.length > 0) {
    const cure = 'Start the version that made them, or a newer one.';
    return ill('migrations', `made by a newer version: ${newer.join(', ')}`, cure);
  }
  const missing = await missingMigrations(records);
  return tallied(
    'migrations',
    missing.map((name) => `${name} is not taken`),
    'Make a backup, then run: npm run -s underlap -- migrate',
  );
}

async function contentsOf(records: Database, now: Date): Promise<readonly Finding[]> {
  const pages = await pageFaults(records);
  const check = tallied('pages', pages, restore);
  if (pages.length > 0) return [check];
  const found = await trails(records.db);
  const entries = found.reduce((sum, { length }) => sum + length, 0);
  const broken = trailFaults(found);
  return [
    check,
    tallied('references', await referenceFaults(records), restore),
    broken.length === 0
      ? well('audit trails', `${found.length} whole, ${entries} entries`)
      : ill('audit trails', broken.join('; '), 'Find out who changed them; compare with a backup.'),
    clockCheck(await newestInstant(records.db), now),
  ];
}

const why = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** Looks into the records without changing them. What cannot be reached ends the list. */
export async function recordsFindings(
  { place }: Pick<Settings, 'place'>,
  now: Date,
): Promise<readonly Finding[]> {
  let records: Database | undefined;
  try {
    records = openExisting(place);
    if (!records) return [well('database', 'none yet; it is made at the first start')];
    const tables = await records.db.introspection.getTables();
    if (tables.length === 0) return [well('database', 'empty; it is set up at the first start')];
    const migrations = await migrationsCheck(records);
    const reached = [well('database', `${records.kind}, ${tables.length} tables`), migrations];
    return [...reached, ...(await contentsOf(records, now))];
  } catch (error) {
    const cure =
      'url' in place
        ? 'See that PostgreSQL runs and that DATABASE_URL names it.'
        : `See that this user may read ${place.folder}; if so: ${restore}`;
    return [ill('database', why(error), cure)];
  } finally {
    await records?.close();
  }
}
