import type { Attempt } from '../database/tables.ts';
import type { Sent } from './sent.ts';

type Row = Pick<Attempt, 'id' | 'kind' | 'played' | 'work_id' | 'finished_at'>;

/** A stored attempt in the form in which it was sent; what a browser would make of it is left out. */
export function keptAgain({ id, kind, played, work_id, finished_at }: Row): Sent {
  const kept = JSON.parse(played) as object;
  const sent = { id, work: work_id ?? undefined };
  // It came in by the door, and is never changed: it has the form that it had.
  return kind === 'takeoff' || kind === 'written'
    ? { ...sent, kind, kept: { ...kept, id, at: finished_at } as never }
    : { ...sent, kind: 'mockup', kept: { ...kept, id } as never };
}
