/** What a roster would change, as the server tells it. */
type CellFault = {
  readonly column: string | null;
  readonly code: string;
  readonly text?: string;
  readonly meant?: string;
  readonly row?: number;
};

type RowChange = {
  readonly field: string;
  readonly from: string | null;
  readonly to: string | null;
};

export type PlanRow = {
  readonly row: number;
  readonly name: string;
  readonly given: {
    readonly number?: string;
    readonly crew?: string;
    readonly roles?: readonly string[];
    readonly language?: string;
    readonly email?: string;
  };
  readonly state: 'new' | 'changed' | 'unchanged' | 'faulty';
  readonly changes: readonly RowChange[];
  readonly faults: readonly CellFault[];
};

export type Plan = {
  readonly rows: readonly PlanRow[];
  readonly crews: readonly string[];
  readonly ignored: readonly string[];
  readonly digest: string;
};

export type { CellFault, RowChange };
