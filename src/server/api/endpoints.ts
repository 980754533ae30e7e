/** Every address of the API: the one table that the document is made from. */
import type { Endpoint } from './endpoint.ts';
import { assignment, assignments, standings } from './endpoints/assignments.ts';
import { attempts } from './endpoints/attempts.ts';
import { board } from './endpoints/board.ts';
import { certificates } from './endpoints/certificates.ts';
import { crews, people } from './endpoints/people.ts';

export const endpoints: readonly Endpoint[] = [
  people,
  crews,
  certificates,
  board,
  assignments,
  assignment,
  standings,
  attempts,
];
