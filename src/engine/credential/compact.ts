/** The compact form of a JSON Web Signature (RFC 7515, 2015, section 7.1), apart from any cryptography. */
import { fault, ok, type Result } from '#engine/result.ts';
import { fromBase64url, toBase64url } from './base64url.ts';

export type Compact = {
  readonly header: Readonly<Record<string, unknown>>;
  readonly payload: Readonly<Record<string, unknown>>;
  /** What is signed. */
  readonly signed: Uint8Array<ArrayBuffer>;
  readonly signature: Uint8Array<ArrayBuffer>;
};

/** In characters; a credential has some thousands. */
export const longestCompact = 65_536;

const encoder = new TextEncoder();
const decoder = new TextDecoder('utf-8', { fatal: true });

const part = (value: object): string => toBase64url(encoder.encode(JSON.stringify(value)));

/** What a signature is made over. */
export const signingInput = (header: object, payload: object): string =>
  `${part(header)}.${part(payload)}`;

export const compactOf = (input: string, signature: Uint8Array): string =>
  `${input}.${toBase64url(signature)}`;

function objectFrom(text: string): Readonly<Record<string, unknown>> | undefined {
  const bytes = fromBase64url(text);
  if (!bytes.ok) return undefined;
  try {
    const value = JSON.parse(decoder.decode(bytes.value)) as unknown;
    const isObject = typeof value === 'object' && value !== null && !Array.isArray(value);
    return isObject ? (value as Readonly<Record<string, unknown>>) : undefined;
  } catch {
    return undefined;
  }
}

/** Blanks around it are let be, as a file may end in a line break. */
export function compactFrom(text: string): Result<Compact, 'NOT_COMPACT'> {
  if (text.length > longestCompact) return fault('NOT_COMPACT');
  const parts = text.trim().split('.');
  const [head = '', body = '', tail = ''] = parts;
  const [header, payload] = [objectFrom(head), objectFrom(body)];
  const signature = fromBase64url(tail);
  if (!header || !payload || !signature.ok || parts.length !== 3) return fault('NOT_COMPACT');
  return ok({
    header,
    payload,
    signed: encoder.encode(`${head}.${body}`),
    signature: signature.value,
  });
}
