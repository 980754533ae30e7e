import { type Kysely, sql } from 'kysely';
import type { Kind } from '../kind.ts';
import { appendOnly } from './append-only.ts';

/** Hands-on checks as they are filled in and signed, what each is judged by, and their photos. */
const tables = [
  `create table check_basis (
    content_revision text not null,
    scheme text not null,
    part text not null,
    bundle text not null,
    primary key (content_revision, scheme, part)
  )`,

  `create table hands_on_check (
    id text primary key,
    company_id text not null references company (id),
    application_id text not null references application (id),
    person_id text not null references person (id),
    scheme text not null,
    part text not null,
    taking_id text not null,
    place integer not null,
    examiner_id text not null references person (id),
    content_revision text not null,
    begun_at text not null,
    filled text not null,
    saved_at text not null,
    signed_at text,
    outcome text,
    detail text,
    unique (taking_id, place),
    unique (taking_id, examiner_id)
  )`,
  `create index hands_on_check_by on hands_on_check (examiner_id, signed_at)`,
  `create index hands_on_check_on on hands_on_check (application_id, part)`,
  `create index hands_on_check_in on hands_on_check (company_id, signed_at)`,

  `create table check_photo (
    id text primary key,
    check_id text not null references hands_on_check (id),
    company_id text not null references company (id),
    type text not null,
    bytes bytea not null,
    size integer not null,
    digest text not null,
    kept_at text not null
  )`,
  `create index check_photo_of on check_photo (check_id)`,
];

const demo = (company: string): string =>
  `exists (select 1 from company where id = ${company} and is_demo = 1)`;
const signed = (check: string): string =>
  `exists (select 1 from hands_on_check where id = ${check} and signed_at is not null)`;
/** A picture may show who was erased: it goes, and its digest stays in what was signed. */
const erased = `exists (select 1 from person
  join hands_on_check on hands_on_check.person_id = person.id
  where hands_on_check.id = old.check_id and person.erased_at is not null)`;

const said = 'a signed check never changes';

/** What keeps a signed check and its photos as they are, whoever is connected. */
const inSqlite = [
  `create trigger hands_on_check_no_update before update on hands_on_check
   when old.signed_at is not null begin select raise(abort, '${said}'); end`,
  `create trigger hands_on_check_no_delete before delete on hands_on_check
   when old.signed_at is not null and not ${demo('old.company_id')}
   begin select raise(abort, '${said}'); end`,
  `create trigger check_photo_no_insert before insert on check_photo
   when ${signed('new.check_id')} begin select raise(abort, '${said}'); end`,
  `create trigger check_photo_no_update before update on check_photo
   begin select raise(abort, 'a photo never changes'); end`,
  `create trigger check_photo_no_delete before delete on check_photo
   when ${signed('old.check_id')} and not ${demo('old.company_id')} and not ${erased}
   begin select raise(abort, '${said}'); end`,
];

const refusal = (what: string): string =>
  `raise exception '${what}' using errcode = 'restrict_violation'`;

const inPostgres = [
  `create function hands_on_check_refuse() returns trigger language plpgsql as
   $$ begin
     if old.signed_at is null then
       if tg_op = 'DELETE' then return old; end if;
       return new;
     end if;
     if tg_op = 'DELETE' then
       if ${demo('old.company_id')} then return old; end if;
     end if;
     ${refusal(said)};
   end $$`,
  `create trigger hands_on_check_no_change before update or delete on hands_on_check
   for each row execute function hands_on_check_refuse()`,
  `create function check_photo_refuse() returns trigger language plpgsql as
   $$ begin
     if tg_op = 'UPDATE' then ${refusal('a photo never changes')}; end if;
     if tg_op = 'INSERT' then
       if ${signed('new.check_id')} then ${refusal(said)}; end if;
       return new;
     end if;
     if ${signed('old.check_id')} and not ${demo('old.company_id')} and not ${erased} then
       ${refusal(said)};
     end if;
     return old;
   end $$`,
  `create trigger check_photo_no_change before insert or update or delete on check_photo
   for each row execute function check_photo_refuse()`,
];

export async function checks(db: Kysely<unknown>, kind: Kind): Promise<void> {
  const triggers = kind === 'sqlite' ? inSqlite : inPostgres;
  for (const statement of [...tables, ...triggers]) await sql.raw(statement).execute(db);
  // What checks are judged by belongs to no company.
  await appendOnly(db, kind, 'check_basis', `''`);
}
