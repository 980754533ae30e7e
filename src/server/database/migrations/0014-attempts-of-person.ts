import { type Kysely, sql } from 'kysely';

/**
 * Beside `attempt_received (company_id, received_at, id)` an index that began with the person alone tied
 * for SQLite's choice: it walked all that the company ever received for the attempts of one person. With
 * both in front this one is narrower by one equality, whatever is known of the table.
 */
const statements = [
  'drop index attempt_of',
  'create index attempt_of on attempt (person_id, company_id, received_at, id)',
];

export async function attemptsOfPerson(db: Kysely<unknown>): Promise<void> {
  for (const statement of statements) await sql.raw(statement).execute(db);
}
