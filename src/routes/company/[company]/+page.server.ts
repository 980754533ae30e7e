import type { SchemeId } from '#engine/exam/scheme.ts';
import { within } from '#server/access/act.ts';
import { may } from '#server/access/rights.ts';
import { list } from '#server/assignments/assignment-list.ts';
import { due } from '#server/assignments/due.ts';
import { attention, examsWaiting } from '#server/board/attention.ts';
import { columnsOf, schemesNow } from '#server/board/qualifications.ts';
import { currentContent } from '#server/current-content.ts';
import { ownSittings } from '#server/exams/own-sitting.ts';
import * as crewList from '#server/people/crew-list.ts';
import type { PageServerLoad } from './$types';

const shownAssignments = 5;

export const load: PageServerLoad = async ({ locals }) => {
  const { db, act } = within(locals);
  const { company, roles } = act.by;
  const crews = may(roles, 'see crews') ? await crewList.page(db, company) : undefined;
  const given = may(roles, 'see assignments')
    ? await list(db, company, { when: 'current', at: act.at })
    : undefined;
  const { assignments } = await due(db, act.by, act.at);
  const { schemes: known } = await currentContent();
  const exams = await ownSittings(db, act.by);
  const [isOffice, isExaminer] = [may(roles, 'plan jobs'), may(roles, 'examine')];
  const schemes = isOffice || isExaminer ? await schemesNow() : undefined;
  return {
    at: act.at,
    exams: exams.map(({ scheme, part, ...exam }) => ({
      ...exam,
      title: known.get(scheme as SchemeId)?.parts.find(({ id }) => id === part)?.title,
    })),
    waiting: schemes && {
      columns: columnsOf(schemes),
      items: isOffice
        ? await attention(db, company, act.at, schemes)
        : await examsWaiting(db, company),
    },
    crews: crews && { shown: crews.crews, isMore: crews.next !== undefined },
    given: given?.assignments.slice(0, shownAssignments),
    due: assignments.map(({ id, title, opens, due, works }) => ({
      id,
      title,
      opens,
      due,
      left: works.filter(({ passedAt }) => passedAt === null).length,
    })),
    isOffice,
    mayAssign: may(roles, 'assign'),
  };
};
