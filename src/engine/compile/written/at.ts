import type { DiagnosticCode } from '#engine/compile/diagnostic.ts';
import { placeAt, type Path, type SourceFile } from '#engine/compile/source-file.ts';

/** Where a question stands. */
export type At = { readonly file: SourceFile; readonly path: Path };

/** Reports a fault at what lies under a question's path. */
export const faultAt = (
  { file, path }: At,
  below: Path,
  code: DiagnosticCode,
  message: string,
  cure: string,
): void => file.fault(code, placeAt(file, [...path, ...below]), message, cure);
