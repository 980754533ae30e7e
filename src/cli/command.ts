/** Where a command writes: results go out, and what is said about them to a person goes beside. */
export type Streams = {
  readonly out: (text: string) => void;
  readonly beside: (text: string) => void;
};

/** 0 well, 1 faults found, 2 misuse. */
export type ExitCode = 0 | 1 | 2;

export type Command = {
  /** What stands after the command's name. */
  readonly usage: string;
  readonly summary: string;
  readonly run: (args: readonly string[], streams: Streams) => ExitCode | Promise<ExitCode>;
};

/** A command that was asked for something it cannot do; the message says how to ask. */
export class MisuseError extends Error {
  override readonly name = 'MisuseError';
}
