import { m } from '#ui/messages/generated/messages.js';

type Row = {
  readonly reminder: 'ended' | 0 | 30 | 60 | undefined;
  readonly state: string;
};

export type Group<R> = { readonly name: string; readonly rows: readonly R[] };

/** Each once: by how soon it ends, then what is suspended, then the rest. Empty groups are left out. */
export function byUrgency<R extends Row>(rows: readonly R[]): readonly Group<R>[] {
  const ending = [
    [0, m.cert_reminder_0],
    [30, m.cert_reminder_30],
    [60, m.cert_reminder_60],
    ['ended', m.cert_reminder_ended],
  ] as const;
  const isEnding = ({ reminder }: Row): boolean => reminder !== undefined;
  const later = rows.filter((row) => !isEnding(row));
  return [
    ...ending.map(([when, name]) => ({
      name: name(),
      rows: rows.filter(({ reminder }) => reminder === when),
    })),
    { name: m.cert_stopped(), rows: later.filter(({ state }) => state === 'suspended') },
    { name: m.cert_rest(), rows: later.filter(({ state }) => state !== 'suspended') },
  ].filter((group) => group.rows.length > 0);
}
