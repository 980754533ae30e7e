/** A job as it was typed in, to show again where something was wrong with it. */
export type TypedJob = {
  readonly title: string;
  readonly place: string;
  readonly startsOn: string;
  readonly endsOn: string;
  readonly note: string;
  readonly roles: readonly {
    readonly title: string;
    readonly count: unknown;
    readonly needs: readonly string[];
  }[];
  readonly travel: readonly { readonly crew: string; readonly miles: unknown }[];
};
