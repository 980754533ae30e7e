/** A request to the API, from what its address holds to the answer. */
import type { z } from 'zod';
import { fault, ok, type Result } from '#engine/result.ts';
import { outageOf } from '../database/outage.ts';
import { report } from '../fault-report.ts';
import { ownLog } from '../log.ts';
import type { Endpoint } from './endpoint.ts';
import { type Problem, refused } from './problem.ts';

export type Asking = {
  readonly locals: App.Locals;
  readonly params: Readonly<Record<string, string | undefined>>;
  readonly url: URL;
};

/** Seconds after which an outage may be over. */
const later = 5;

const faultsOf = (error: z.ZodError): NonNullable<Problem['faults']> =>
  error.issues.flatMap((issue) =>
    issue.code === 'unrecognized_keys'
      ? issue.keys.map((at) => ({ at, says: 'There is no such parameter.' }))
      : [{ at: issue.path.join('.'), says: issue.message }],
  );

/** What stands behind the question mark. A name that stands there twice is a fault. */
function queryOf(endpoint: Endpoint, url: URL): Result<unknown, Problem> {
  const names = [...url.searchParams.keys()];
  const twice = names.find((name, place) => names.indexOf(name) !== place);
  if (twice !== undefined) {
    const faults = [{ at: twice, says: 'It is there more than once.' }];
    return fault({ code: 'PARAMETERS_WRONG', faults });
  }
  const read = endpoint.query.safeParse(Object.fromEntries(url.searchParams));
  if (read.success) return ok(read.data);
  return fault({ code: 'PARAMETERS_WRONG', faults: faultsOf(read.error) });
}

async function replyTo(endpoint: Endpoint, asking: Asking): Promise<Result<unknown, Problem>> {
  const { desk, bearer, at } = asking.locals;
  // An identifier that cannot be one stands for nothing.
  const path = endpoint.path.safeParse(asking.params);
  if (!desk || !bearer || !path.success) return fault({ code: 'ABSENT' });
  const query = queryOf(endpoint, asking.url);
  if (!query.ok) return query;
  const caller = { db: desk.database.db, bearer, at };
  return endpoint.reply(caller, { path: path.data, query: query.value });
}

/** Whatever happens is answered in the form of the API. */
export async function answer(endpoint: Endpoint, asking: Asking): Promise<Response> {
  try {
    const reply = await replyTo(endpoint, asking);
    return reply.ok ? Response.json(reply.value) : refused(reply.error);
  } catch (thrown) {
    const outage = outageOf(thrown);
    const about = { route: endpoint.route, method: endpoint.method };
    const id = report(ownLog(), thrown, { ...about, ...(outage ? { outage } : {}) });
    return refused(outage ? { code: 'OUTAGE', id, seconds: later } : { code: 'FAULT', id });
  }
}
