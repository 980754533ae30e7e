/**
 * Examinations under way, for the pictures: the invented company has only results. Three candidates: one
 * whose sitting waits for its code, one who sits every part, and one who has sat them all and was checked.
 */
import { openContent } from '#server/content.ts';
import { begin } from '#server/checks/begin.ts';
import { sign } from '#server/checks/sign.ts';
import { save } from '#server/checks/checks.ts';
import { openApplication } from '#server/exams/applications.ts';
import { releaseSitting } from '#server/exams/release.ts';
import { setUpSitting } from '#server/exams/set-up.ts';
import { enterCode, makeStartCode } from '#server/exams/start-code.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Act } from '#server/people/member.ts';
import type { Result } from '#engine/result.ts';
import { bundleOf, pointsOf, saysOf } from '../../server/checks/examined.ts';
import { answering, planIn, tell } from '../../server/exams/sittings.ts';
import { firstWith, newcomer, type There } from './people-there.ts';

import { scheme } from './parts-there.ts';
const parts = { written: 'knowledge', takeoff: 'quantities', wall: 'practice-walls' } as const;
type SatPart = keyof typeof parts;

const content = openContent();

function sure<T>(result: Result<T, unknown>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

type Exam = {
  readonly there: There;
  readonly examiner: Act;
  readonly candidate: Act;
  readonly application: string;
};

async function apply(there: There, office: Act, candidate: Act): Promise<string> {
  const { person } = candidate.by;
  return sure(await openApplication(there.records.db, office, content, { person, scheme }));
}

async function waitingFor({ there, examiner, application }: Exam, part: SatPart) {
  const asked = { application, part: parts[part] };
  return sure(await setUpSitting(there.records.db, examiner, content, asked));
}

/** Begun, with so many items answered rightly and one wrongly. */
async function begun(exam: Exam, part: SatPart, right: number): Promise<string> {
  const { there, examiner, candidate } = exam;
  const { records } = there;
  const id = await waitingFor(exam, part);
  const code = sure(await makeStartCode(records, examiner, id));
  sure(await enterCode(records, candidate, id, code));
  const plan = await planIn(records, id);
  const answers = plan.items
    .slice(0, right + 1)
    .map((_, place) =>
      answering(plan, { place: place + 1, sequence: place + 1, isWrong: place === right }),
    );
  await tell(records, candidate, id, answers);
  return id;
}

async function released(exam: Exam, part: SatPart, right: number): Promise<string> {
  const { there, examiner, candidate } = exam;
  const id = await begun(exam, part, right);
  await tell(there.records, candidate, id, [{ kind: 'handed-in' }]);
  sure(await releaseSitting(there.records, examiner, content, id));
  return id;
}

/** A sheet filled in up to a share of its points; the last of them is wrong. */
async function checked({ there, examiner, application }: Exam, share: number) {
  const { db } = there.records;
  const part = 'real-wall';
  const id = sure(await begin(db, examiner, content, { id: freshId(), application, part }));
  const points = pointsOf(await bundleOf({ db, company: there.company }, id));
  const seen = points.slice(0, Math.ceil(points.length * share));
  const minor = seen.findLast(({ severity }) => severity === 'minor');
  const sheet = Object.fromEntries(
    seen.map((point) => [point.id, { at: examiner.at, says: saysOf(point, point !== minor) }]),
  );
  return { id, sheet };
}

export async function examsThere(there: There): Promise<Readonly<Record<string, string>>> {
  const { records, company, auth, password } = there;
  const { db } = records;
  const office = await firstWith(db, company, 'office');
  const examiner = await firstWith(db, company, 'examiner');
  const exam = async (who: 'waiting' | 'sitting' | 'sat', name: string): Promise<Exam> => {
    const candidate = { by: await newcomer(there, who, name), at: office.at };
    const application = await apply(there, office, candidate);
    return { there, examiner, candidate, application };
  };
  const waiting = await exam('waiting', 'Bruno Umbral');
  const sitting = await exam('sitting', 'Chela Viga');
  const sat = await exam('sat', 'Ana Voladizo');
  const underWay = await checked(waiting, 0.6);
  sure(await save(db, examiner, underWay));
  const known = {
    waiting: await waitingFor(waiting, 'written'),
    written: await begun(sitting, 'written', 11),
    takeoff: await begun(sitting, 'takeoff', 1),
    wall: await begun(sitting, 'wall', 0),
    writtenDone: await released(sat, 'written', 27),
    takeoffDone: await released(sat, 'takeoff', 4),
    wallDone: await released(sat, 'wall', 1),
  };
  const signing = { ...(await checked(sat, 1)), password, brokenOff: undefined };
  const { login_id: login } = await db
    .selectFrom('person')
    .select('login_id')
    .where('id', '=', examiner.by.person)
    .executeTakeFirstOrThrow();
  sure(await sign({ db, auth, login: login! }, examiner, content, signing));
  return { ...known, check: underWay.id, signedCheck: signing.id, application: sat.application };
}
