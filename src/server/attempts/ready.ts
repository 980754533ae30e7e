import type { Member } from '../people/member.ts';
import type { Marked } from './marking.ts';
import type { Work } from './work.ts';

/** Marked, and whose it is. `work` is assigned to them and open, or undefined. */
export type Ready = {
  readonly id: string;
  readonly by: Pick<Member, 'company' | 'person'>;
  readonly kind: string;
  readonly work: Work | undefined;
  readonly marked: Marked;
  readonly at: string;
};
