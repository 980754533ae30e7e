import type { Attempt } from '#engine/marking/attempt.ts';
import type { AttemptFile } from '#engine/marking/attempt-file.ts';
import { formatExact } from '#engine/measure/format-exact.ts';
import { approximate } from '#engine/measure/rational.ts';

/** What was done on a wall, as it is kept and sent: `attemptFrom` reads it back. */
export const wallFile = ({ sequence, played }: Attempt): AttemptFile => ({
  method: sequence.method.id,
  site: sequence.site,
  dataSheet: sequence.dataSheet.id,
  steps: played.map(({ card, settings, minute }) => ({
    step: card,
    ...(settings.size > 0 && {
      settings: Object.fromEntries([...settings].map(([id, value]) => [id, formatExact(value)])),
    }),
    ...(minute && { minute: approximate(minute) }),
  })),
});
