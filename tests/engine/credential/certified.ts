import type { IsoDate } from '#engine/calendar.ts';
import { scopeOf } from '#engine/certificate/scope.ts';
import type { Certified } from '#engine/credential/credential.ts';
import { issuerAt } from '#engine/credential/issuer.ts';
import type { SchemeId } from '#engine/exam/scheme.ts';
import { openContent } from '#server/content.ts';

const { schemes, methods } = openContent();

export const origin = 'https://underlap.example';

/** From 1 May 2030 for three years. */
export const certified: Certified = {
  address: `${origin}/verify/AAAAAAAAAAAAAAAAAAAAAA`,
  issue: 1,
  name: 'Ana María Ruiz',
  issuer: { ...issuerAt(origin, ['issuers', 'north-wall']), name: 'North Wall' },
  scope: scopeOf(schemes.get('base-of-wall-installer' as SchemeId)!, methods),
  passed: [{ part: 'knowledge', on: '2030-04-20' as IsoDate }],
  grantedOn: '2030-05-01' as IsoDate,
  until: '2033-05-01' as IsoDate,
};

/** In seconds since 1970, as a verifier has it. */
export const moment = (text: string): number => Date.parse(text) / 1000;
