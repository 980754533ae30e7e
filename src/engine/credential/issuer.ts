/**
 * Who issues, by an address: a did:web where the address is a secure one, else the address itself. A
 * did:web is an address written with colons, where a port's own colon is %3A (the did:web method of
 * the W3C credentials community group).
 */
import { fault, ok, type Result } from '#engine/result.ts';

export type Issuer = {
  readonly id: string;
  /** Where its profile is read. */
  readonly url: string;
};

const secure = 'https://';

/** `origin` as `https://underlap.example`; `path` in parts that need no escape. */
export function issuerAt(origin: string, path: readonly string[]): Issuer {
  const url = [origin, ...path].join('/');
  if (!origin.startsWith(secure)) return { id: url, url };
  const host = origin.slice(secure.length).replace(':', '%3A');
  return { id: ['did:web', host, ...path].join(':'), url };
}

/** Where the document of a did:web is read. */
export function didWebAddress(did: string): Result<string, 'NOT_DID_WEB'> {
  const [, host = '', rest = ''] = /^did:web:([^:/?#]+)((?::[^:/?#]+)*)$/.exec(did) ?? [];
  if (host === '') return fault('NOT_DID_WEB');
  const path = rest === '' ? '/.well-known' : rest.replaceAll(':', '/');
  return ok(`${secure}${host.replace(/%3A/i, ':')}${path}/did.json`);
}

const originOf = (address: string): string | undefined =>
  /^(https?:\/\/[^/?#]+)(?:[/?#]|$)/.exec(address)?.[1];

/** The origin that speaks for an issuer, and whose keys it signs with; undefined for other kinds. */
export function originOfIssuer(id: string): string | undefined {
  const did = didWebAddress(id);
  return originOf(did.ok ? did.value : id);
}

/** Whether a key is one that the issuer publishes, by where it is found. */
export const isKeyOf = (key: string, issuer: string): boolean => {
  const origin = originOf(key);
  return origin !== undefined && origin === originOfIssuer(issuer);
};
