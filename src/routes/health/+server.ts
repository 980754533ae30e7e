import { json } from '@sveltejs/kit';
import { sql } from 'kysely';
import { desk } from '#server/desk.ts';
import type { RequestHandler } from './$types';

/** Whether the server answers and can reach its records; says nothing about them. */
export const GET: RequestHandler = async () => {
  try {
    const { database } = await desk();
    await sql`select 1`.execute(database.db);
    return json({ health: 'good' }, { headers: { 'cache-control': 'no-store' } });
  } catch {
    return json(
      { health: 'no records' },
      { status: 503, headers: { 'cache-control': 'no-store' } },
    );
  }
};
