/** An application as the rules of a decision see it: the scheme, what was shown, and who has to keep out. */
import type { IsoDate } from '#engine/calendar.ts';
import type { Content } from '#engine/compile/content.ts';
import type { Application as Case } from '#engine/exam/decision.ts';
import type { Evidence } from '#engine/exam/evidence.ts';
import type { PartId } from '#engine/exam/scheme.ts';
import type { Standing } from '#engine/exam/standing.ts';
import { rational, type Rational } from '#engine/measure/rational.ts';
import { involvedWith } from '../checks/involvement.ts';
import type { Db } from '../database/open-database.ts';
import { type Application, standingFor } from '../exams/applications.ts';

function fractionFrom(text: string | null): Rational | undefined {
  if (text === null) return undefined;
  const [above = '0', below = '1'] = text.split('/');
  return rational(BigInt(above), BigInt(below));
}

/** The passes that count on that day, and no others: what lapsed is no part of it. */
async function evidenceOf(
  db: Db,
  { person, scheme }: Pick<Application, 'person' | 'scheme'>,
  { parts }: Standing,
): Promise<readonly Evidence[]> {
  const rows = await db
    .selectFrom('part_result')
    .select(['part', 'on_date', 'released_at', 'examiners', 'agreement'])
    .where('person_id', '=', person)
    .where('scheme', '=', scheme)
    .where('result', '=', 'passed')
    .orderBy('made_at', 'desc')
    .execute();
  return rows
    .filter(({ part, on_date }) =>
      parts.some(
        (one) => one.part === part && one.state.kind === 'passed' && one.state.on === on_date,
      ),
    )
    .map((row) => ({
      part: row.part as PartId,
      on: row.on_date as IsoDate,
      isReleased: row.released_at !== null,
      examiners: JSON.parse(row.examiners) as readonly string[],
      agreement: fractionFrom(row.agreement),
    }));
}

/** As of `day`; undefined where the scheme is no longer known. */
export async function caseOf(
  db: Db,
  content: Pick<Content, 'schemes'>,
  company: string,
  application: Application,
  day: IsoDate,
): Promise<Case | undefined> {
  const scheme = content.schemes.get(application.scheme);
  if (!scheme) return undefined;
  const standing = await standingFor(db, scheme, application, day);
  return {
    scheme,
    candidate: application.person,
    renews: application.renews?.until,
    standing,
    evidence: await evidenceOf(db, application, standing),
    involved: await involvedWith(db, company, application.person),
  };
}
