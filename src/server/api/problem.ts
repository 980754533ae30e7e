/**
 * Every refusal of the API, as problem details (RFC 9457, 2023). No problem has a page of its own, so its
 * type is `about:blank` and its title that of the status; `code` tells problems of one status apart.
 */
import { z } from 'zod';
import type { Scope } from '#engine/record/token.ts';

/** Each code with its status and what it says. Kept for good: programs go by them. */
const problems = {
  NO_TOKEN: [401, 'Send a token, as the header Authorization: Bearer with the token after it.'],
  UNKNOWN_TOKEN: [401, 'There is no such token.'],
  TOKEN_EXPIRED: [401, 'The token has run out. The office makes another.'],
  TOKEN_REVOKED: [401, 'The token was revoked by the office.'],
  WRONG_SCOPE: [403, 'The token is not good for this. The office makes one that is.'],
  ABSENT: [404, 'There is nothing at this address, or it is not of the company of the token.'],
  TOO_LARGE: [413, 'More was sent than is taken here. Send it in parts.'],
  PARAMETERS_WRONG: [422, 'Something that was sent cannot be used; `faults` says what.'],
  CURSOR_UNKNOWN: [422, '`after` names nothing in the list. Begin the list again.'],
  TOO_OFTEN: [429, 'The token asked too often. Wait as long as the header retry-after says.'],
  FAULT: [500, 'That is a fault of the server; it is logged under `id`.'],
  OUTAGE: [503, 'The records cannot be reached or written for now. Ask again in a few seconds.'],
} as const satisfies Readonly<Record<string, readonly [number, string]>>;

export type ProblemCode = keyof typeof problems;
export const problemCodes = Object.keys(problems) as readonly ProblemCode[];
export const statusOf = (code: ProblemCode): number => problems[code][0];

const titles: Readonly<Record<number, string>> = {
  401: 'Unauthorized',
  403: 'Forbidden',
  404: 'Not Found',
  413: 'Content Too Large',
  422: 'Unprocessable Content',
  429: 'Too Many Requests',
  500: 'Internal Server Error',
  503: 'Service Unavailable',
};

export type Problem = {
  readonly code: ProblemCode;
  /** In place of what is usually said. */
  readonly detail?: string | undefined;
  /** What cannot be used, by its name. */
  readonly faults?: readonly { readonly at: string; readonly says: string }[];
  /** Under which it is logged. */
  readonly id?: string;
  /** How long to wait. */
  readonly seconds?: number;
  /** What the token should be good for. */
  readonly scope?: Scope;
};

export const problemSchema = z
  .strictObject({
    type: z.literal('about:blank'),
    title: z.string(),
    status: z.int().min(400).max(599),
    detail: z.string(),
    code: z.enum(problemCodes).describe('Tells problems of one status apart.'),
    faults: z.array(z.strictObject({ at: z.string(), says: z.string() })).optional(),
    id: z.string().optional(),
  })
  .meta({ id: 'Problem' });

/** RFC 6750, section 3: what a program is told to send. */
function challenge({ code, scope }: Problem): string | undefined {
  if (code === 'NO_TOKEN') return 'Bearer';
  if (statusOf(code) === 401) return 'Bearer error="invalid_token"';
  return code === 'WRONG_SCOPE' ? `Bearer error="insufficient_scope", scope="${scope}"` : undefined;
}

export function refused(problem: Problem): Response {
  const { code, detail = problems[code][1], faults, id, seconds } = problem;
  const status = statusOf(code);
  const body: z.infer<typeof problemSchema> = {
    type: 'about:blank',
    title: titles[status]!,
    status,
    detail,
    code,
    ...(faults ? { faults: [...faults] } : {}),
    ...(id === undefined ? {} : { id }),
  };
  const headers = new Headers({
    'content-type': 'application/problem+json',
    'cache-control': 'no-store',
  });
  const asked = challenge(problem);
  if (asked) headers.set('www-authenticate', asked);
  if (seconds !== undefined) headers.set('retry-after', String(seconds));
  return new Response(JSON.stringify(body), { status, headers });
}
