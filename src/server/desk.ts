/** What a running server works with: opened when it is first needed, since a build only reads this file. */
import { Allowance } from './api/allowance.ts';
import { Inbox } from './attempts/inbox.ts';
import { openDoor } from './certificates/verify-door.ts';
import { type Database, migrate, openDatabase } from './database/open-database.ts';
import { secret } from './database/secret.ts';
import { type Ledger, openLedger } from './exams/happenings.ts';
import { type Auth, openAuth } from './logins/auth.ts';
import type { RecentTries } from './logins/recent-tries.ts';
import { tidy } from './logins/throttle.ts';
import { type Log, ownLog } from './log.ts';
import { type Settings, settingsFrom } from './settings.ts';

export type Desk = {
  readonly settings: Settings;
  readonly database: Database;
  readonly auth: Auth;
  /** Signs session cookies. */
  readonly sessionKey: string;
  readonly log: Log;
  readonly inbox: Inbox;
  /** Of examinations under way. */
  readonly ledger: Ledger;
  /** Strangers at the door of verification. */
  readonly askers: RecentTries;
  /** How often each token asked. */
  readonly allowance: Allowance;
};

/** Opens the records, up to date. Throws where they cannot be opened. */
export async function openDesk(settings: Settings): Promise<Desk> {
  const log = ownLog();
  const database = openDatabase(settings.place);
  try {
    const made = await migrate(database);
    if (made.length > 0) log.info('migrated', { steps: made.join(' ') });
    await tidy(database.db, new Date());
    const auth = await openAuth(database);
    const sessionKey = await secret(database.db, 'sessions');
    return {
      settings,
      database,
      auth,
      sessionKey,
      log,
      inbox: new Inbox(database),
      ledger: openLedger(database),
      askers: openDoor(),
      allowance: new Allowance(),
    };
  } catch (error) {
    await database.close().catch(() => undefined);
    throw error;
  }
}

let opening: Promise<Desk> | undefined;

function open(): Promise<Desk> {
  const settings = settingsFrom(process.env);
  if (!settings.ok) throw new Error(settings.error.join('\n'));
  const opened = openDesk(settings.value);
  // Told by the server once the last request is answered.
  process.once('sveltekit:shutdown' as 'SIGTERM', () => {
    void opened.then(({ database }) => database.close());
  });
  return opened;
}

/** This process's desk. Where it could not be opened, the next request tries again. */
export function desk(): Promise<Desk> {
  opening ??= open().catch((error: unknown) => {
    opening = undefined;
    throw error;
  });
  return opening;
}
