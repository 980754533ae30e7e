import type { ToPractise } from '#engine/tracing/points-of.ts';
import { addressOf } from '#ui/mockup/wall-address.ts';

/**
 * Where to practise it, without hints. The cards lie otherwise for each count of walls, and the same when
 * the page is opened again.
 */
export const practiseAddress = ({ point, site, part }: ToPractise, attempts: number): string =>
  addressOf({
    method: point.method,
    site,
    mode: 'own',
    seed: String(attempts + 1),
    ...(part ? { part } : {}),
  });
