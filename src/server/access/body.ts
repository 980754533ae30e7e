/** What may be sent to the server, and what it answers to the rest. */
import { fault, ok, type Result } from '#engine/result.ts';
import { whereNotJson } from './json-place.ts';

export type BodyFault = {
  readonly status: 400 | 413 | 415;
  readonly code: 'TOO_LARGE' | 'TOO_DEEP' | 'NOT_JSON' | 'NOT_UTF8' | 'WRONG_TYPE';
  /** What is wrong, where, and how to mend it. */
  readonly message: string;
  readonly line?: number;
  readonly column?: number;
};

export type BodyLimits = {
  /** In bytes, included. */
  readonly most?: number;
  /** Levels of lists and objects in one another, included. */
  readonly deepest?: number;
};

const kilobyte = 1024;
export const usualBytes = 64 * kilobyte;
export const usualDepth = 40;

/** Addresses that take more than the usual: a whole file of rows, and what was done in weeks without signal. */
const larger: Readonly<Record<string, number>> = {
  // All answers of a form at once, as after an hour without signal.
  '/company/[company]/exam/[sitting]/told': 512 * kilobyte,
  '/company/[company]/attempts': 2048 * kilobyte,
  // More than a file that is read in may have, so that the page itself can say that it is too large.
  '/company/[company]/board/declared': 3072 * kilobyte,
  '/company/[company]/people/import': 3072 * kilobyte,
  // The whole sheet of a check, with a note at every point; and a photo as a phone makes it smaller.
  '/company/[company]/checks/[check]': 512 * kilobyte,
  '/company/[company]/checks/[check]/sign': 512 * kilobyte,
  '/company/[company]/checks/[check]/photos/[photo]': 1536 * kilobyte,
};

/** The most that any address takes. */
export const mostBytes = Math.max(...Object.values(larger));

export const mostFor = (route: string | null): number => larger[route ?? ''] ?? usualBytes;

const inKilobytes = (bytes: number): string => `${Math.floor(bytes / kilobyte)} kB`;

export const tooLarge = (most: number): BodyFault => ({
  status: 413,
  code: 'TOO_LARGE',
  message: `At most ${inKilobytes(most)} can be sent here at once. Send it in parts.`,
});

/** By what a request says of its own length; one that does not say is counted as it is read. */
export function lengthFault(request: Request, most: number): BodyFault | undefined {
  return Number(request.headers.get('content-length') ?? 0) > most ? tooLarge(most) : undefined;
}

/** The bytes of a body; undefined where there are too many, of which no more are read. */
async function bytesFrom(request: Request, most: number): Promise<Uint8Array | undefined> {
  const parts: Uint8Array[] = [];
  let count = 0;
  for await (const part of (request.body ?? []) as AsyncIterable<Uint8Array>) {
    count += part.length;
    if (count > most) return undefined;
    parts.push(part);
  }
  return Buffer.concat(parts);
}

/** What was sent as it is, no more of it than may be. */
export async function wholeBody(
  request: Request,
  most: number,
): Promise<Result<Uint8Array, BodyFault>> {
  const bytes = lengthFault(request, most) ? undefined : await bytesFrom(request, most);
  return bytes ? ok(bytes) : fault(tooLarge(most));
}

/** How many levels of brackets stand in one another, outside of strings. */
export function depthOf(text: string): number {
  let [depth, deepest] = [0, 0];
  for (const [mark] of text.matchAll(/"(?:[^"\\]|\\.)*"|[{}[\]]/gs)) {
    if (mark === '{' || mark === '[') deepest = Math.max(deepest, (depth += 1));
    else if (mark === '}' || mark === ']') depth -= 1;
  }
  return deepest;
}

function textFrom(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

function parsed(text: string): Result<unknown, BodyFault> {
  try {
    return ok(JSON.parse(text) as unknown);
  } catch {
    const place = whereNotJson(text);
    const at = place && { line: place.line, column: place.column };
    const where = place
      ? `At line ${place.line}, column ${place.column} there should be ${place.expected}.`
      : 'Check its brackets and quotes.';
    return fault({ status: 400, code: 'NOT_JSON', message: `This is not JSON. ${where}`, ...at });
  }
}

/** Reads what was sent as JSON, no further than it may be. */
export async function jsonBody(
  request: Request,
  { most = usualBytes, deepest = usualDepth }: BodyLimits = {},
): Promise<Result<unknown, BodyFault>> {
  const [type = ''] = (request.headers.get('content-type') ?? '').split(';');
  if (type.trim().toLowerCase() !== 'application/json') {
    const message = 'Send JSON, with the header content-type: application/json.';
    return fault({ status: 415, code: 'WRONG_TYPE', message });
  }
  const bytes = await wholeBody(request, most);
  if (!bytes.ok) return bytes;
  const text = textFrom(bytes.value);
  if (text === undefined) {
    return fault({ status: 400, code: 'NOT_UTF8', message: 'Send the text in UTF-8.' });
  }
  if (depthOf(text) > deepest) {
    const message = `Lists and objects may stand in one another ${deepest} deep, no deeper.`;
    return fault({ status: 400, code: 'TOO_DEEP', message });
  }
  return parsed(text);
}

/** The answer to a body that was refused. */
export const refusal = ({ status, ...told }: BodyFault): Response =>
  Response.json(told, { status });
