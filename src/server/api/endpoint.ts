/**
 * What an address of the API takes and answers. The handler and the OpenAPI document both go by it: what it
 * takes is read by these schemas, and the type of what it answers is theirs.
 */
import { z } from 'zod';
import type { Result } from '#engine/result.ts';
import { uuidForm } from '#engine/uuid.ts';
import type { Db } from '../database/open-database.ts';
import type { Problem } from './problem.ts';
import type { Scope } from '#engine/record/token.ts';
import type { Bearer } from './tokens.ts';

export type Caller = { readonly db: Db; readonly bearer: Bearer; readonly at: string };

/** A list of names with what each takes. */
type Taken = z.ZodObject;

export type Endpoint = {
  /** By which programs that are made from the document name it. */
  readonly id: string;
  /** As the framework names it. */
  readonly route: string;
  readonly method: 'GET';
  readonly scope: Scope;
  readonly summary: string;
  readonly path: Taken;
  readonly query: Taken;
  readonly answer: z.ZodType;
  readonly reply: (caller: Caller, asked: Asked) => Promise<Result<unknown, Problem>>;
};

type Asked<Path = unknown, Query = unknown> = {
  readonly path: Path;
  readonly query: Query;
};

type Typed<P extends Taken, Q extends Taken, A extends z.ZodType> = Omit<
  Endpoint,
  'path' | 'query' | 'answer' | 'reply'
> & {
  readonly path?: P;
  readonly query?: Q;
  readonly answer: A;
  readonly reply: (
    caller: Caller,
    asked: Asked<z.output<P>, z.output<Q>>,
  ) => Promise<Result<z.input<A>, Problem>>;
};

const nothing = z.strictObject({});

export const endpoint = <
  A extends z.ZodType,
  P extends Taken = typeof nothing,
  Q extends Taken = typeof nothing,
>({
  path,
  query,
  reply,
  ...rest
}: Typed<P, Q, A>): Endpoint => ({
  ...rest,
  path: path ?? nothing,
  query: query ?? nothing,
  // Asked only with what these schemas read.
  reply: reply as Endpoint['reply'],
});

/** As the records take it, of any version: what they hold can always be asked for. */
export const id = z.string().regex(uuidForm).meta({ format: 'uuid' });

/** One page of a list, and what to ask for after. */
export const pageOf = <T extends z.ZodType>(item: T) =>
  z.strictObject({
    items: z.array(item),
    next: id.nullable().describe('What to send as `after` for the next page; null on the last.'),
  });

export const after = id
  .optional()
  .describe('The id that the page comes after: `next` of the page before.');

export const most = z.coerce
  .number()
  .int()
  .min(1)
  .max(500)
  .default(100)
  .describe('How many at most.');

export const instant = z.iso.datetime();
export const day = z.iso.date();
