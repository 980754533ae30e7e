/** Whom a row is about: everything it says of somebody must be true of one and the same person. */
import { fault, ok, type Result } from '#engine/result.ts';
import type { Db } from '../../database/open-database.ts';
import { hasEmail } from '../../logins/logins.ts';
import { folded } from '../../people/folded.ts';
import { type WhoColumn, whoColumns } from './columns.ts';
import type { DeclaredCellFault, DeclaredRow } from './read-rows.ts';

export type Whose = (who: DeclaredRow['who']) => Result<string, DeclaredCellFault>;

/** Those of a company who have not left. */
export const peopleNow = (db: Db, company: string) =>
  db
    .selectFrom('person')
    .leftJoin('login', 'login.id', 'person.login_id')
    .select(['person.id', 'person.name', 'person.number', 'person.email'])
    .select(['login.username', 'login.email as loginEmail'])
    .where('person.company_id', '=', company)
    .where('left_at', 'is', null)
    .where('erased_at', 'is', null);

export type KnownPerson = Awaited<ReturnType<ReturnType<typeof peopleNow>['execute']>>[number];

/** What somebody signs in with, or else the email that the office wrote down. */
export const accountsOf = ({ username, loginEmail, email }: KnownPerson): readonly string[] =>
  [username, loginEmail !== null && hasEmail(loginEmail) ? loginEmail : null, email].filter(
    (account) => account !== null,
  );

const plain: Readonly<Record<WhoColumn, (cell: string) => string>> = {
  person: folded,
  personNumber: (cell) => cell,
  account: (cell) => cell.toLowerCase(),
};

export async function openWhose(db: Db, company: string): Promise<Whose> {
  const known = { person: new Map(), personNumber: new Map(), account: new Map() } as Readonly<
    Record<WhoColumn, Map<string, Set<string>>>
  >;
  const put = (column: WhoColumn, text: string, id: string) => {
    const key = plain[column](text);
    known[column].set(key, (known[column].get(key) ?? new Set()).add(id));
  };
  for (const person of await peopleNow(db, company).execute()) {
    put('person', person.name, person.id);
    if (person.number !== null) put('personNumber', person.number, person.id);
    for (const account of accountsOf(person)) put('account', account, person.id);
  }
  return (who) => {
    const said = whoColumns.filter((column) => who[column] !== '');
    let left: ReadonlySet<string> | undefined;
    for (const column of said) {
      const text = who[column];
      const these = known[column].get(plain[column](text));
      if (!these) return fault({ column, code: 'UNKNOWN', text });
      const both = left?.intersection(these) ?? these;
      if (both.size === 0) return fault({ column, code: 'CONTRADICTED', text });
      left = both;
    }
    const [first, second] = left ?? [];
    if (first === undefined) return fault({ column: 'person', code: 'MISSING' });
    const [column] = said;
    return second === undefined ? ok(first) : fault({ column: column!, code: 'AMBIGUOUS' });
  };
}
