/** What is kept about somebody on the way to certificates, for them to have. */
import type { Db } from '../database/open-database.ts';
import { written } from './export-rows.ts';

/** What they applied for, sat and came to. A form's questions are the company's, and no part of it. */
async function examinationsOf(db: Db, person: string) {
  const applications = db.selectFrom('application').selectAll().where('person_id', '=', person);
  const sittings = db
    .selectFrom('sitting')
    .select(['id', 'application_id', 'scheme', 'part', 'kind', 'phase', 'made_at'])
    .where('person_id', '=', person);
  const happened = db
    .selectFrom('sitting_event')
    .innerJoin('sitting', 'sitting.id', 'sitting_event.sitting_id')
    .select(['sitting_event.sitting_id', 'place', 'sitting_event.kind', 'at', 'detail'])
    .where('sitting.person_id', '=', person);
  const results = db.selectFrom('part_result').selectAll().where('person_id', '=', person);
  return {
    applications: written(await applications.orderBy('made_at').execute()),
    sittings: written(await sittings.orderBy('made_at').execute()),
    happened: written(await happened.orderBy('sitting_id').orderBy('place').execute()),
    results: written(await results.orderBy('made_at').execute()),
  };
}

async function certificatesOf(db: Db, person: string) {
  const theirs = db.selectFrom('certificate').select('id').where('person_id', '=', person);
  const certificates = db.selectFrom('certificate').selectAll().where('person_id', '=', person);
  const events = db.selectFrom('certificate_event').selectAll();
  const issues = db.selectFrom('certificate_issue').selectAll();
  const declared = db.selectFrom('declared_certificate').selectAll();
  return {
    declared: written(await declared.where('person_id', '=', person).orderBy('made_at').execute()),
    certificates: written(await certificates.orderBy('made_at').execute()),
    certificateEvents: written(
      await events.where('certificate_id', 'in', theirs).orderBy('at').execute(),
    ),
    certificateIssues: written(
      await issues.where('certificate_id', 'in', theirs).orderBy('made_at').execute(),
    ),
    calendars: await db
      .selectFrom('calendar_feed')
      .select(['about', 'made_at'])
      .where('person_id', '=', person)
      .execute(),
  };
}

/** Checks of their work by hand, with the photos as they are, in Base64. */
async function checksOf(db: Db, person: string) {
  const checks = await db
    .selectFrom('hands_on_check')
    .selectAll()
    .where('person_id', '=', person)
    .orderBy('begun_at')
    .execute();
  const photos = await db
    .selectFrom('check_photo')
    .innerJoin('hands_on_check', 'hands_on_check.id', 'check_photo.check_id')
    .selectAll('check_photo')
    .where('hands_on_check.person_id', '=', person)
    .orderBy('check_photo.id')
    .execute();
  return written(checks).map((check) => ({
    ...check,
    photos: photos
      .filter(({ check_id }) => check_id === check['id'])
      .map(({ bytes, ...photo }) => ({ ...photo, data: Buffer.from(bytes).toString('base64') })),
  }));
}

/** What was decided on their applications, and what they appealed against. */
async function rulingsOf(db: Db, person: string) {
  const rulings = await db
    .selectFrom('ruling')
    .innerJoin('application', 'application.id', 'ruling.application_id')
    .selectAll('ruling')
    .where('application.person_id', '=', person)
    .orderBy('ruling.made_at')
    .execute();
  const appeals = await db
    .selectFrom('appeal')
    .selectAll()
    .where('by_person_id', '=', person)
    .execute();
  const involved = await db
    .selectFrom('involvement')
    .selectAll()
    .where('candidate_id', '=', person)
    .execute();
  return { rulings: written(rulings), appeals, involved };
}

export const certificationOf = async (db: Db, person: string) => ({
  examinations: await examinationsOf(db, person),
  checks: await checksOf(db, person),
  ...(await rulingsOf(db, person)),
  ...(await certificatesOf(db, person)),
});
