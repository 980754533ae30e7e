import type { AppealRefusal } from '#engine/exam/appeal.ts';
import { fault } from '#engine/result.ts';

type NoCase = 'ABSENT' | 'CLOSED' | 'UNDER_APPEAL' | 'NO_APPEAL' | 'APPEALED_BEFORE' | 'TOO_LONG';

/**
 * What the rules refuse, and what is no case at all. `CLOSED`: it was decided, or taken back. `UNDER_APPEAL`:
 * the appeal is decided first. `APPEALED_BEFORE`: once against each decision, and against the last one only.
 */
export type DecideFault = AppealRefusal | { readonly code: NoCase };

export const refused = (code: NoCase) => fault([{ code }]);
