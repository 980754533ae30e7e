/** The tables, as Kysely reads them. Identifiers are UUIDs; JSON is text. Both kinds of database hold the same. */
import type { Selectable } from 'kysely';
import type { CertificateTables } from './tables/certificates.ts';
import type { CertificationTables } from './tables/certification.ts';
import type { ExaminationTables } from './tables/examination.ts';
import type { JobTables } from './tables/jobs.ts';
import type { OperationTables } from './tables/operation.ts';
import type { PeopleTables, PersonTable } from './tables/people.ts';
import type { AttemptTable, WorkTables } from './tables/work.ts';

export type Tables = PeopleTables &
  WorkTables &
  CertificationTables &
  ExaminationTables &
  CertificateTables &
  JobTables &
  OperationTables;

export type Person = Selectable<PersonTable>;
export type Attempt = Selectable<AttemptTable>;
