import { DatabaseSync } from 'node:sqlite';
import type { Scheme } from '#engine/exam/scheme.ts';
import { sqliteFile } from '#server/database/open-database.ts';
import { at, company } from './fill.ts';

/** Of every twenty: sixteen in force, ending over three years, two that ended, one suspended, one withdrawn. */
export function certify(folder: string, people: number, schemes: readonly Scheme[]): void {
  const database = new DatabaseSync(sqliteFile(folder), { enableForeignKeyConstraints: false });
  database.exec('pragma synchronous = off');
  schemes.slice(0, 2).forEach(({ id }, place) => {
    database.exec(`with recursive n(i) as (select 0 union all select i + 1 from n where i < ${people - 1})
      insert into certificate
        (id, company_id, person_id, scheme, granted_on, valid_until, state, made_at)
      select printf('c${place}-%012x', i), '${company}',
        printf('01900002-0000-7000-8000-%012x', i), '${id}', '2028-01-01',
        date('${at}', case when i % 20 in (3, 9) then '-30 days' else (i * 7 % 1095) || ' days' end),
        case when i % 20 = 5 then 'suspended' when i % 20 = 7 then 'withdrawn' else 'in-force' end,
        '${at}' from n`);
  });
  database.exec('analyze');
  database.close();
}
