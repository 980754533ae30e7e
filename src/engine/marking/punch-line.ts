import type { Severity } from '#engine/severity.ts';
import type { Text } from '#engine/text.ts';
import type { DeviationKind } from './deviation.ts';

/** An item of the punch list, in words that outlast the content. */
export type PunchLine = {
  readonly kind: DeviationKind;
  readonly card: Text;
  readonly severity: Severity;
  readonly points: number;
  readonly because: Text;
  readonly rework: Text;
};
