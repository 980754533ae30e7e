import { uuid7, uuidBytes } from '#engine/uuid.ts';

/** A name for an attempt that no other has. Works where a page is not served securely. */
export const freshAttemptId = (): string =>
  uuid7(Date.now(), crypto.getRandomValues(new Uint8Array(uuidBytes)));
