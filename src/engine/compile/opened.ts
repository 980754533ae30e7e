import type { SourceFile } from './source-file.ts';

/** What was read in a file, with the file, which knows where everything stands. */
export type Opened<T> = { readonly file: SourceFile; readonly value: T };
