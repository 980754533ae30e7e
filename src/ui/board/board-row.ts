import type { Competence } from '#engine/competence/competence.ts';
import type { Text } from '#engine/text.ts';

export type Column = { readonly id: string; readonly title: Text };

export type BoardRow = {
  readonly id: string;
  readonly name: string;
  readonly number: string | null;
  readonly crew: string | null;
  readonly crewName: string | null;
  readonly cells: readonly Competence[];
};

export type Narrowing = {
  readonly search: string;
  readonly crew: string;
  readonly qualification: string;
  readonly state: string;
  readonly order: string;
  readonly most: string;
};
