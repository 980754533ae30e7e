import type { Streams } from './command.ts';

export const print = ({ out }: Streams, value: unknown): void =>
  out(`${JSON.stringify(value, undefined, 2)}\n`);
