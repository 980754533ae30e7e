import type { Draft } from '#server/assignments/draft.ts';
import type { Db } from '#server/database/open-database.ts';
import { freshId } from '#server/fresh-id.ts';
import { at } from '../attempts/company.ts';
import { keptWall } from '../attempts/kept.ts';

export const later = (days: number): string =>
  new Date(Date.parse(at) + days * 86_400_000).toISOString();

export const { method } = keptWall().attempt;

export const anyWall = { kind: 'mockup', method, count: 1 } as const;

export const draft = (changes: Partial<Draft> = {}): Draft => ({
  title: 'Base of wall',
  note: '',
  opens: '',
  due: later(7),
  tries: '',
  pass: '90',
  pieces: [anyWall],
  crews: [],
  persons: [],
  ...changes,
});

export async function freshCrew(db: Db, company: string, name = 'North'): Promise<string> {
  const id = freshId();
  await db.insertInto('crew').values({ id, company_id: company, name, created_at: at }).execute();
  return id;
}
