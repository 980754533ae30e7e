import type { Kysely } from 'kysely';
import type { MigrationProvider } from 'kysely/migration';
import type { Kind } from './kind.ts';
import { people } from './migrations/0001-people.ts';
import { logins } from './migrations/0002-logins.ts';
import { roster } from './migrations/0003-roster.ts';
import { assignments } from './migrations/0004-assignments.ts';
import { certification } from './migrations/0005-certification.ts';
import { sittings } from './migrations/0006-sittings.ts';
import { checks } from './migrations/0007-checks.ts';
import { certificates } from './migrations/0008-certificates.ts';
import { panels } from './migrations/0009-panels.ts';
import { jobs } from './migrations/0010-jobs.ts';
import { apiTokens } from './migrations/0011-api-tokens.ts';
import { declared } from './migrations/0012-declared.ts';
import { crewSearch } from './migrations/0013-crew-search.ts';
import { attemptsOfPerson } from './migrations/0014-attempts-of-person.ts';

type Step = (db: Kysely<unknown>, kind: Kind) => Promise<void>;

/** In the order they are made; a name that was once released is never changed. */
const steps: Readonly<Record<string, Step>> = {
  '0001-people': people,
  '0002-logins': logins,
  '0003-roster': roster,
  '0004-assignments': assignments,
  '0005-certification': certification,
  '0006-sittings': sittings,
  '0007-checks': checks,
  '0008-certificates': certificates,
  '0009-panels': panels,
  '0010-jobs': jobs,
  '0011-api-tokens': apiTokens,
  '0012-declared': declared,
  '0013-crew-search': crewSearch,
  '0014-attempts-of-person': attemptsOfPerson,
};

/** The one set of migrations, for either kind of database. They only go forward: a backup goes back. */
export const migrationsFor = (kind: Kind): MigrationProvider => ({
  getMigrations: () =>
    Promise.resolve(
      Object.fromEntries(
        Object.entries(steps).map(([name, step]) => [name, { up: (db) => step(db, kind) }]),
      ),
    ),
});
