import { error } from '@sveltejs/kit';
import type { Desk } from '../desk.ts';
import type { Db } from '../database/open-database.ts';
import type { Session } from '../logins/session.ts';
import type { Act } from '../people/member.ts';

/** What a page behind a door of a company works with. */
export type Within = {
  readonly desk: Desk;
  readonly db: Db;
  readonly session: Session;
  readonly act: Act;
};

/** Throws a 404 where no door was passed, which the table of doors rules out. */
export function within({ desk, session, member, at }: App.Locals): Within {
  if (!desk || !session || !member) error(404);
  return { desk, db: desk.database.db, session, act: { by: member, at } };
}
