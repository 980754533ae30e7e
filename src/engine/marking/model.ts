/** Any machine that a trace of cards can be held against: with choice, repetition, optional steps. */
export type Model<State> = {
  readonly initial: State;
  readonly moves: (state: State) => readonly ModelMove<State>[];
  readonly isFinal: (state: State) => boolean;
  /** The same for two states just when they are the same. */
  readonly key: (state: State) => string;
};

/** A silent move, which shows in no trace, has no label. */
export type ModelMove<State> = { readonly label: string | null; readonly next: State };
