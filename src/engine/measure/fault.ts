import { fault } from '#engine/result.ts';
import type { Result } from '#engine/result.ts';
import type { Text } from '#engine/text.ts';

/** Everything that can be wrong with a written quantity. */
export const measureFaultCodes = [
  'EMPTY',
  'TOO_LONG',
  'NOT_A_NUMBER',
  'AMBIGUOUS_NUMBER',
  'ZERO_DENOMINATOR',
  'IMPROPER_FRACTION',
  'SIGN_INSIDE',
  'MISSING_UNIT',
  'UNKNOWN_UNIT',
  'WRONG_DIMENSION',
  'OUT_OF_ORDER_PARTS',
  'PARTS_DO_NOT_JOIN',
  'FRACTION_NOT_LAST',
  'BELOW_ABSOLUTE_ZERO',
  'TRAILING_TEXT',
  'NOT_ENCODED',
] as const;

export type MeasureFaultCode = (typeof measureFaultCodes)[number];

export interface MeasureFault {
  readonly code: MeasureFaultCode;
  /** In plain words: what was found, and how to mend it. */
  readonly message: Text;
  /** Where it stands in the text: first character from 0, and how many. */
  readonly at: number;
  readonly length: number;
}

/** A part of the text, from `at` up to but not including `end`. */
export interface Span {
  readonly at: number;
  readonly end: number;
}

export const measureFault = (
  code: MeasureFaultCode,
  { at, end }: Span,
  message: Text,
): Result<never, MeasureFault> => fault({ code, message, at, length: end - at });
