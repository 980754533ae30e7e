import { roundToMultiple, type Rational } from '#engine/measure/rational.ts';
import type { RoundRule } from './family.ts';

/** In base units, as answers are judged. */
export const rounded = (value: Rational, rule: RoundRule | undefined): Rational =>
  rule ? roundToMultiple(value, rule.to.value, rule.how) : value;
