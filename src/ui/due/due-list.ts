/** What is due to somebody, as the server last said: kept on the device, to be read without signal. */
import type { Store } from '#ui/attempts/browser-store.ts';
import type { Membership } from '#ui/sending/me.ts';

export type DueSubject =
  | {
      readonly kind: 'mockup';
      readonly method: string;
      /** None: another wall every time. */
      readonly site?: Readonly<Record<string, string>>;
    }
  | { readonly kind: 'takeoff'; readonly family: string }
  | { readonly kind: 'written'; readonly topic: string; readonly questions: number };

export type DueWork = {
  readonly id: string;
  readonly subject: DueSubject;
  readonly pass: number;
  readonly count: number;
  readonly tries: number;
  /** Null means as many as one likes. */
  readonly left: number | null;
  readonly good: number;
  readonly best: number | null;
  readonly passedAt: string | null;
  readonly askedAgainAt: string | null;
  readonly isStuck: boolean;
};

export type DueAssignment = {
  readonly id: string;
  readonly title: string;
  readonly note: string | null;
  readonly opens: string;
  readonly due: string | null;
  readonly works: readonly DueWork[];
};

export type Said = {
  readonly id: string;
  readonly attempt: string;
  readonly about: string;
  readonly kind: 'comment' | 'again';
  readonly reason: string;
  readonly by: string | null;
  readonly at: string;
};

export type DueList = {
  /** When it was read, by the clock of the server. */
  readonly at: string;
  readonly assignments: readonly DueAssignment[];
  readonly said: readonly Said[];
};

const placeOf = ({ company, person }: Pick<Membership, 'company' | 'person'>): string =>
  `due/${company}/${person}`;

const isList = (value: unknown): value is DueList =>
  typeof value === 'object' &&
  value !== null &&
  'at' in value &&
  typeof value.at === 'string' &&
  'assignments' in value &&
  Array.isArray(value.assignments) &&
  'said' in value &&
  Array.isArray(value.said);

export function keptDue(store: Store, whose: Membership): DueList | undefined {
  const found = store.read(placeOf(whose));
  return isList(found) ? found : undefined;
}

/** Reads it anew and keeps it; undefined where the server does not answer with it. */
export async function readDue(
  store: Store,
  ask: typeof fetch,
  whose: Membership,
): Promise<DueList | undefined> {
  const answer = await ask(`/company/${whose.company}/due`, {
    headers: { accept: 'application/json' },
  }).catch(() => undefined);
  const list: unknown = answer?.ok ? await answer.json().catch(() => undefined) : undefined;
  if (!isList(list)) return undefined;
  store.write(placeOf(whose), list);
  return list;
}

export const isPassed = ({ works }: DueAssignment): boolean =>
  works.every(({ passedAt }) => passedAt !== null);

/** What is to be done first stands first; what is passed, last. */
export const inTurn = (assignments: readonly DueAssignment[]): readonly DueAssignment[] =>
  assignments.toSorted(
    (a, b) =>
      Number(isPassed(a)) - Number(isPassed(b)) ||
      (a.due ?? '9').localeCompare(b.due ?? '9') ||
      a.opens.localeCompare(b.opens),
  );
