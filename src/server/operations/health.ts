import { sql } from 'kysely';
import type { Db } from '../database/open-database.ts';

/** Whether the records can be reached; says nothing about them. `reach` may throw. */
export async function health(reach: () => Promise<Db>): Promise<Response> {
  const headers = { 'cache-control': 'no-store' };
  try {
    await sql`select 1`.execute(await reach());
    return Response.json({ health: 'good' }, { headers });
  } catch {
    return Response.json({ health: 'no records' }, { status: 503, headers });
  }
}
