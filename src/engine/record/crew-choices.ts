export type CrewName = { readonly id: string; readonly name: string };

/** What a form lists to choose a crew from; `isMore` where more are at work than it lists. */
export type CrewChoices = {
  /** Those chosen before, and those found. */
  readonly crews: readonly CrewName[];
  readonly isMore: boolean;
  /** The name that was looked for, or nothing. */
  readonly search: string;
  /** How many were found by that name; `isCut` where there are others of it. */
  readonly found: number;
  readonly isCut: boolean;
};
