/** Who comes in where: the one place at which a request meets the table of doors. */
import type { Problem } from '../api/problem.ts';
import { throughToken } from '../api/token-door.ts';
import type { Bearer } from '../api/tokens.ts';
import type { Desk } from '../desk.ts';
import { type Session, sessionFrom } from '../logins/session.ts';
import { type Member, memberOf } from '../people/member.ts';
import { type Door, doors, scopeOf } from './doors.ts';
import { may, type Right } from './rights.ts';

/** What a request asks for. */
export type Asked = {
  /** The route's id; null for an address that no route has. */
  readonly route: string | null;
  readonly method: string;
  readonly search: string;
  readonly company: string | undefined;
  readonly cookie: string | undefined;
  /** The header of that name. */
  readonly authorization?: string | undefined;
  readonly now: Date;
};

/**
 * `absent` is answered as for an address that is not there: nobody learns of a company that is not theirs.
 */
export type Entrance =
  | { readonly answer: 'open' }
  | { readonly answer: 'in'; readonly session: Session; readonly member?: Member }
  | { readonly answer: 'token'; readonly bearer: Bearer }
  | { readonly answer: 'no token'; readonly problem: Problem }
  | { readonly answer: 'sign in' }
  | { readonly answer: 'absent' }
  | { readonly answer: 'refused' };

/** The door that is asked for; undefined where there is none. */
export function doorOf({ route, method, search }: Pick<Asked, 'route' | 'method' | 'search'>) {
  const known = route === null ? undefined : doors[route];
  if (!known) return undefined;
  const action = /^\?\/(\w+)/.exec(search)?.[1];
  const key = method === 'HEAD' ? 'GET' : method === 'POST' ? (action ?? 'POST') : method;
  return Object.hasOwn(known, key) ? known[key] : undefined;
}

/** Opens the records only for a door that is not open to all. */
export async function enter(asked: Asked, desk: () => Promise<Desk>): Promise<Entrance> {
  const door: Door | undefined = doorOf(asked);
  if (door === undefined) return { answer: 'absent' };
  if (door === 'open') return { answer: 'open' };
  const { database, sessionKey, allowance } = await desk();
  const scope = scopeOf(door);
  if (scope) {
    const { authorization, now } = asked;
    const came = await throughToken({ db: database.db, allowance }, { authorization, scope, now });
    return came.ok
      ? { answer: 'token', bearer: came.value }
      : { answer: 'no token', problem: came.error };
  }
  const session = await sessionFrom(database.db, asked.cookie, sessionKey, asked.now);
  if (!session) return { answer: 'sign in' };
  if (door === 'signed in') return { answer: 'in', session };
  const member = await memberOf(database.db, session.login, asked.company ?? '');
  if (!member) return { answer: 'absent' };
  return may(member.roles, door as Right)
    ? { answer: 'in', session, member }
    : { answer: 'refused' };
}
