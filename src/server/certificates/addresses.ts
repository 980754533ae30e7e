/** The public addresses of certificates, issuers and keys, under the origin of this server. */
import { type Issuer, issuerAt } from '#engine/credential/issuer.ts';
import type { Settings } from '../settings.ts';

export const verifyAddress = (origin: string, publicId: string): string =>
  `${origin}/verify/${publicId}`;

export const issuerOf = (origin: string, company: string): Issuer =>
  issuerAt(origin, ['issuers', company]);

export const keyAddress = (origin: string, id: string): string => `${origin}/keys/${id}`;

/** What is set counts, as what a request says of itself is believed of a proxy alone. */
export const originOf = ({ origin }: Pick<Settings, 'origin'>, url: URL): string =>
  origin ?? url.origin;
