import type { Period } from '#engine/calendar.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { MethodId, SourceId } from '#engine/method/method.ts';
import type { Condition, Site } from '#engine/method/site.ts';
import type { Text } from '#engine/text.ts';

declare const idOf: unique symbol;
type Id<Kind extends string> = string & { readonly [idOf]: Kind };

export type SchemeId = Id<'scheme'>;
export type PartId = Id<'part'>;

/**
 * What somebody must show to be certified, and by which rules (the ideas of ISO/IEC 17024 chapter 8):
 * what the certificate covers, the parts of the examination, tries, how long it holds, how it is
 * renewed, and who must keep out of it.
 */
export type Scheme = {
  readonly id: SchemeId;
  readonly title: Text;
  readonly purpose: Text;
  /** What governs besides, and what a certificate does not say. */
  readonly note: Text;
  /** The walls that the certificate is about. */
  readonly covers: ReadonlyMap<MethodId, Condition>;
  /** Certificates that must be held before the first part is taken, and while it is decided. */
  readonly requires: readonly SchemeId[];
  readonly parts: readonly Part[];
  /** How long a passed part counts towards a certificate. */
  readonly keeps: Period;
  readonly tries: Tries;
  readonly validity: Period;
  readonly renewal: Renewal;
  readonly separation: Separation;
  /** So long after a decision it can be appealed against, the last day included. */
  readonly appeal: Period;
  readonly source: SourceId;
};

export const partKinds = ['written', 'takeoff', 'mock-up', 'hands-on'] as const;
export type PartKind = (typeof partKinds)[number];

type Kind<K extends PartKind> = {
  readonly kind: K;
  readonly id: PartId;
  readonly title: Text;
  /** What passing it shows. */
  readonly evidences: Text;
  /** Least share of what can be earned; above 0, at most 1. Of a mock-up, of its score of 100. */
  readonly passMark: Quantity<'ratio'>;
  readonly time: Quantity<'time'>;
};

/** How many questions of each topic, by its id. */
export type Blueprint = ReadonlyMap<string, number>;

export type WrittenPart = Kind<'written'> & { readonly blueprint: Blueprint };

export type TakeoffPart = Kind<'takeoff'> & {
  /** Ids of families of problems. */
  readonly families: readonly string[];
  readonly count: number;
};

/** The worst disposition of the work that still passes. */
export const passingOutcomes = ['accept', 'rework'] as const;
export type PassingOutcome = (typeof passingOutcomes)[number];

export type MockUpPart = Kind<'mock-up'> & {
  readonly method: MethodId;
  /** Random ones are drawn from what the scheme covers. */
  readonly sites: 'random' | readonly SiteAnswers[];
  /** How many walls are built, each another one, and each to the pass mark. */
  readonly builds: number;
  readonly outcome: PassingOutcome;
};

export type HandsOnPart = Kind<'hands-on'> & {
  readonly method: MethodId;
  readonly site: SiteAnswers;
  readonly examiners: 1 | 2;
  /** Of two examiners: the least share of witness points on which they judged alike. */
  readonly agreement: Quantity<'ratio'> | undefined;
};

export type Part = WrittenPart | TakeoffPart | MockUpPart | HandsOnPart;

/** Questions left open take their usual value. */
export type SiteAnswers = Site;

/** At most so many tries of a part in any such period, and a wait after each that failed. */
export type Tries = { readonly most: number; readonly within: Period; readonly wait: Period };

export type Renewal = {
  /** So long before the certificate ends. */
  readonly opens: Period;
  /** So long after it ended; later, everything is examined anew. */
  readonly closes: Period | undefined;
  readonly parts: readonly RenewalPart[];
};

export type RenewalPart = {
  readonly part: PartId;
  /** Shorter than the part's own; the part's own where none is given. */
  readonly blueprint: Blueprint | undefined;
};

/** For so long after the last time, a person keeps out of another part in certifying the same one. */
export type Separation = {
  readonly trainedExamines: Period;
  readonly trainedDecides: Period;
  readonly examinedDecides: Period;
};

/** What is examined to renew: the parts named, with the shorter blueprints. */
export const renewalParts = ({ parts, renewal }: Scheme): readonly Part[] =>
  renewal.parts.flatMap(({ part: id, blueprint }) =>
    parts
      .filter((part) => part.id === id)
      .map((part) => (part.kind === 'written' && blueprint ? { ...part, blueprint } : part)),
  );
