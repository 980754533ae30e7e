/**
 * How bad a fault is, after the classes of nonconformity of ISO 2859-1: a minor one does not shorten
 * the life of the wall, a major one may, a critical one lets water in.
 */
export const severities = ['minor', 'major', 'critical'] as const;

export type Severity = (typeof severities)[number];

/** What a fault, or a point that is examined, weighs; this project's own choice, not a published scale. */
export const severityWeights: Readonly<Record<Severity, number>> = {
  minor: 1,
  major: 3,
  critical: 9,
};
