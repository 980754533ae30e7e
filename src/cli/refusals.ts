import type { AttemptFault } from '#engine/marking/attempt-file.ts';

/** What could not be read and where, as a person reads it. */
export const refusals = (faults: readonly AttemptFault[]): string =>
  faults
    .map(
      ({ path, code, message }) => `${path === '' ? '(the whole)' : path}  ${code}\n  ${message}\n`,
    )
    .join('');
