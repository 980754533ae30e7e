/** What a row of a roster would change, as the server tells it. */
import type { PlannedRow } from '#engine/record/import-plan.ts';

export type RowChange = {
  readonly field: string;
  readonly from: string | null;
  readonly to: string | null;
};

export type PlanRow = PlannedRow & {
  readonly given: {
    readonly number?: string;
    readonly crew?: string;
    readonly roles?: readonly string[];
    readonly language?: string;
    readonly email?: string;
  };
  readonly changes: readonly RowChange[];
};
