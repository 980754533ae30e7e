/**
 * The claims of a VC-JWT as Open Badges 3.0 has them: the credential itself is the payload, and beside
 * it stand the registered claims (RFC 7519, 2015), each equal to its field.
 */
import type { Credential } from './credential.ts';
import { secondsOf } from './instant.ts';

export type Claims = {
  readonly iss: string;
  readonly jti: string;
  readonly nbf: number;
  readonly sub: string;
  readonly exp: number;
};

export const claimsOf = (credential: Credential): Claims => ({
  iss: credential.issuer.id,
  jti: credential.id,
  nbf: secondsOf(credential.validFrom) ?? 0,
  sub: credential.credentialSubject.id,
  exp: secondsOf(credential.validUntil) ?? 0,
});

type Fields = Readonly<Record<string, unknown>>;
type Claim = keyof Claims;

/** An issuer may stand as its address alone. */
export const idOf = (value: unknown): unknown =>
  typeof value === 'object' && value !== null ? (value as Fields)['id'] : value;

const fields: Readonly<Record<Claim, (credential: Fields) => unknown>> = {
  iss: ({ issuer }) => idOf(issuer),
  jti: ({ id }) => id,
  nbf: ({ validFrom }) => secondsOf(validFrom),
  sub: ({ credentialSubject }) => idOf(credentialSubject),
  exp: ({ validUntil }) => secondsOf(validUntil),
};

/** Claims that are not what the credential says; `exp` stands where the credential ends, and only there. */
export const differingClaims = (payload: Fields): readonly Claim[] =>
  (Object.keys(fields) as Claim[]).filter((claim) => {
    const [claimed, field] = [payload[claim], fields[claim](payload)];
    const isLeftOut = claimed === undefined && field === undefined;
    return claim === 'exp' && isLeftOut && payload['validUntil'] === undefined
      ? false
      : claimed === undefined || claimed !== field;
  });
