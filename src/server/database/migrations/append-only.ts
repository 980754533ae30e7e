import { type Kysely, sql } from 'kysely';
import type { Kind } from '../kind.ts';

/**
 * Lets rows be added to a table and never changed or taken away, whoever is connected; only a company
 * that was invented for looking around can be taken away again. `company` is an expression for the
 * company of the row `old`.
 */
export async function appendOnly(
  db: Kysely<unknown>,
  kind: Kind,
  table: string,
  company: string,
): Promise<void> {
  const isDemo = `exists (select 1 from company where id = ${company} and is_demo = 1)`;
  const statements = kind === 'sqlite' ? inSqlite(table, isDemo) : inPostgres(table, isDemo);
  for (const statement of statements) await sql.raw(statement).execute(db);
}

const inSqlite = (table: string, isDemo: string): readonly string[] => [
  `create trigger ${table}_no_update before update on ${table}
   begin select raise(abort, '${table} is append-only'); end`,
  `create trigger ${table}_no_delete before delete on ${table} when not ${isDemo}
   begin select raise(abort, '${table} is append-only'); end`,
];

const refuse = (table: string): string =>
  `raise exception '${table} is append-only' using errcode = 'restrict_violation'`;

const inPostgres = (table: string, isDemo: string): readonly string[] => [
  `create function ${table}_refuse() returns trigger language plpgsql as
   $$ begin
     if tg_op = 'DELETE' then
       if ${isDemo} then return old; end if;
     end if;
     ${refuse(table)};
   end $$`,
  `create trigger ${table}_no_change before update or delete on ${table}
   for each row execute function ${table}_refuse()`,
  `create trigger ${table}_no_truncate before truncate on ${table}
   for each statement execute function ${table}_refuse()`,
];

/** A company is invented from the first, or never. */
export async function demoForGood(db: Kysely<unknown>, kind: Kind): Promise<void> {
  const said = 'whether a company is invented is for good';
  const statements =
    kind === 'sqlite'
      ? [
          `create trigger company_demo_for_good before update of is_demo on company
           when old.is_demo <> new.is_demo
           begin select raise(abort, '${said}'); end`,
        ]
      : [
          `create function refuse_demo() returns trigger language plpgsql as
           $$ begin raise exception '${said}' using errcode = 'restrict_violation'; end $$`,
          `create trigger company_demo_for_good before update of is_demo on company
           for each row when (old.is_demo <> new.is_demo) execute function refuse_demo()`,
        ];
  for (const statement of statements) await sql.raw(statement).execute(db);
}
