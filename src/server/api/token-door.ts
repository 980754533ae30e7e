/** Whether a request comes in by the token that it sends. */
import { fault, type Result } from '#engine/result.ts';
import type { Db } from '../database/open-database.ts';
import type { RecentTries } from '../logins/recent-tries.ts';
import type { Problem } from './problem.ts';
import type { Scope } from '#engine/record/token.ts';
import { tokenIn } from './token-secret.ts';
import { type Bearer, bearerOf } from './tokens.ts';

type Asking = {
  /** The `Authorization` header. */
  readonly authorization: string | undefined;
  readonly scope: Scope;
  readonly now: Date;
};

/** What is refused for its scope counts as asked, too. */
export async function throughToken(
  { db, allowance }: { readonly db: Db; readonly allowance: RecentTries },
  { authorization, scope, now }: Asking,
): Promise<Result<Bearer, Problem>> {
  if (!authorization) return fault({ code: 'NO_TOKEN' });
  const token = tokenIn(authorization);
  if (token === undefined) return fault({ code: 'UNKNOWN_TOKEN' });
  const bearer = await bearerOf(db, token, now.toISOString());
  if (!bearer.ok) return fault({ code: bearer.error });
  const seconds = allowance.waitFor(bearer.value.token, now);
  if (seconds > 0) return fault({ code: 'TOO_OFTEN', seconds });
  if (!bearer.value.scopes.includes(scope)) return fault({ code: 'WRONG_SCOPE', scope });
  return bearer;
}
