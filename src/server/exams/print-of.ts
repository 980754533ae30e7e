import { createHash } from 'node:crypto';
import { toText } from '#engine/compile/transport.ts';

/** Of 132 bits: the same for what is the same, so that a plan finds out when the content asks something else. */
export const printOf = (asked: unknown): string =>
  createHash('sha256').update(toText(asked)).digest('base64url').slice(0, 22);
