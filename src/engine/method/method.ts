import type { Quantity } from '#engine/measure/quantity.ts';
import type { Severity } from '#engine/severity.ts';
import type { Text } from '#engine/text.ts';
import type { Condition, SiteQuestion, Weather } from './site.ts';
import type { Assembly, Drawn, Zone } from './drawing.ts';

declare const idOf: unique symbol;
type Id<Kind extends string> = string & { readonly [idOf]: Kind };

export type MethodId = Id<'method'>;
export type StepId = Id<'step'>;
export type SettingId = Id<'setting'>;
export type DecoyId = Id<'decoy'>;
export type DataSheetId = Id<'data sheet'>;
export type NumberId = Id<'number'>;
export type SourceId = Id<'source'>;
export type HazardId = Id<'hazard'>;
export type PlaceId = Id<'place'>;
export type JointId = Id<'joint'>;

/** A job broken down for teaching: what is done, in which order, why, and what goes wrong. */
export type Method = {
  readonly id: MethodId;
  readonly title: Text;
  readonly purpose: Text;
  readonly governs: Text;
  readonly dataSheet: DataSheetId;
  readonly assembly: Assembly;
  readonly site: readonly SiteQuestion[];
  /** In one correct order. */
  readonly steps: readonly Step[];
  readonly decoys: readonly Decoy[];
  readonly water: WaterTest;
};

export type Step = {
  readonly id: StepId;
  readonly say: Text;
  readonly when: Condition;
  readonly keyPoints: readonly Text[];
  readonly reason: Text;
  /** Of leaving it out. */
  readonly severity: Severity;
  readonly takes: Quantity<'time'>;
  readonly after: readonly Constraint[];
  readonly wait: Wait | undefined;
  readonly settings: readonly Setting[];
  readonly hazards: readonly HazardId[];
  readonly draws: readonly Drawn[];
  /** The weather of the wall that holds once this is done. */
  readonly changes: Weather;
  readonly rework: Rework;
  readonly source: SourceId;
};

/** `step` must be done, and have cured, before the step that states this. */
export type Constraint = {
  readonly step: StepId;
  readonly because: Text;
  readonly severity: Severity;
  readonly when: Condition;
};

/** Time that must pass after a step before anything that follows it. */
export type Wait = {
  readonly number: NumberId;
  /** How far above the dew point the surface must be, or it never dries. */
  readonly dewMargin: NumberId | undefined;
  readonly because: Text;
  readonly test: Text;
  readonly severity: Severity;
};

/** A value the installer chooses, judged against a number of the data sheet. */
export type Setting = {
  readonly id: SettingId;
  readonly number: NumberId;
  readonly ask: Text;
  readonly because: Text;
  readonly severity: Severity;
};

export type Rework = {
  /** Whether the work can be mended where it is, or what covers it must come off again. */
  readonly undo: 'in-place' | 'tear-out';
  readonly say: Text;
};

/** A card that people really play and that belongs on no wall of this method. */
export type Decoy = {
  readonly id: DecoyId;
  readonly say: Text;
  readonly when: Condition;
  readonly because: Text;
  readonly severity: Severity;
  readonly hazards: readonly HazardId[];
  readonly rework: Rework;
  readonly source: SourceId;
};

export const failures = ['left-out', 'out-of-order', 'rushed', 'out-of-tolerance'] as const;
export type Failure = (typeof failures)[number];

export type WaterTest = {
  readonly places: readonly Place[];
  readonly joints: readonly Joint[];
};

export type Place = {
  readonly id: PlaceId;
  readonly name: Text;
  readonly side: 'wet' | 'between' | 'dry';
};

/** Lets water from one place into the next when any of its keepers failed or a decoy spoilt it. */
export type Joint = {
  readonly id: JointId;
  readonly name: Text;
  readonly from: PlaceId;
  readonly to: PlaceId;
  readonly when: Condition;
  readonly zone: Zone;
  readonly keptBy: readonly Keeper[];
  readonly spoiltBy: readonly DecoyId[];
};

export type Keeper = {
  readonly step: StepId;
  readonly fails: readonly Failure[];
  /** When given, only this setting's tolerance counts. */
  readonly setting: SettingId | undefined;
};
