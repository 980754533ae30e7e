import { randomBytes } from 'node:crypto';
import { uuid7, uuidBytes } from '#engine/uuid.ts';

/** An identifier for something that the server itself makes. */
export const freshId = (): string => uuid7(Date.now(), randomBytes(uuidBytes));
