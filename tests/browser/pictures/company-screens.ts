/** What those of a company see, each as somebody who would. */
import type { Screen } from './screen.ts';
import { part, scheme } from './parts-there.ts';
import { working } from './working.ts';

const home = '/company/[company]';
const question = { scheme, part, question: 'question' };

export const companyScreens: readonly Screen[] = [
  { name: 'companies', route: '/company', as: 'two' },
  { name: 'account', route: '/account', as: 'apprentice' },
  { name: 'due', route: '/due', as: 'apprentice' },
  { name: 'check-empty', route: '/check', as: 'holder' },
  { name: 'check', route: '/check', as: 'holder', then: working('checkCredential') },

  { name: 'office-home', route: home, as: 'office' },
  { name: 'office-board', route: `${home}/board`, as: 'office' },
  { name: 'office-board-person', route: `${home}/board/[person]`, as: 'office' },
  { name: 'office-coverage', route: `${home}/board/coverage`, as: 'office' },
  { name: 'office-declared', route: `${home}/board/declared`, as: 'office' },
  { name: 'office-jobs', route: `${home}/jobs`, as: 'office' },
  { name: 'office-job-new', route: `${home}/jobs/new`, as: 'office' },
  { name: 'office-job', route: `${home}/jobs/[job]`, as: 'office' },
  { name: 'office-crews', route: `${home}/crews`, as: 'office' },
  { name: 'office-people', route: `${home}/people`, as: 'office' },
  { name: 'office-person', route: `${home}/people/[person]`, as: 'office' },
  { name: 'office-import', route: `${home}/people/import`, as: 'office' },
  { name: 'office-cards', route: `${home}/cards`, as: 'office' },
  { name: 'office-applications', route: `${home}/applications`, as: 'office' },
  { name: 'office-certificates', route: `${home}/certificates`, as: 'office' },
  { name: 'office-certificate', route: `${home}/certificates/[certificate]`, as: 'office' },
  { name: 'office-decisions', route: `${home}/decisions`, as: 'office' },
  {
    name: 'office-decision',
    route: `${home}/decisions/[application]`,
    as: 'office',
  },
  { name: 'office-tokens', route: `${home}/tokens`, as: 'office' },

  { name: 'examiner-home', route: home, as: 'examiner' },
  { name: 'examiner-checks', route: `${home}/checks`, as: 'examiner' },
  { name: 'examiner-decisions', route: `${home}/decisions`, as: 'examiner' },
  { name: 'examiner-numbers', route: `${home}/numbers`, as: 'examiner' },
  {
    name: 'examiner-numbers-part',
    route: `${home}/numbers/[scheme]/[part]`,
    as: 'examiner',
    with: { scheme, part },
  },
  {
    name: 'examiner-numbers-question',
    route: `${home}/numbers/[scheme]/[part]/[question]`,
    as: 'examiner',
    with: question,
  },
  { name: 'examiner-panel', route: `${home}/numbers/panels/[panel]`, as: 'examiner' },

  { name: 'trainer-home', route: home, as: 'trainer' },
  { name: 'trainer-crew', route: `${home}/crews/[crew]`, as: 'trainer' },
  { name: 'trainer-points', route: `${home}/people/[person]/points`, as: 'trainer' },
  { name: 'trainer-assignments', route: `${home}/assignments`, as: 'trainer' },
  { name: 'trainer-assignment', route: `${home}/assignments/[assignment]`, as: 'trainer' },
  { name: 'trainer-assignment-new', route: `${home}/assignments/new`, as: 'trainer' },
  { name: 'trainer-attempt', route: `${home}/attempts/[attempt]`, as: 'trainer' },
  { name: 'trainer-numbers', route: `${home}/numbers`, as: 'trainer' },

  { name: 'apprentice-home', route: home, as: 'apprentice' },
  { name: 'apprentice-points', route: `${home}/points`, as: 'apprentice' },
  { name: 'own-certificates', route: `${home}/certificates/mine`, as: 'holder' },
  { name: 'own-certificates-none', route: `${home}/certificates/mine`, as: 'sitting' },
  { name: 'outcomes', route: `${home}/outcomes`, as: 'refused' },
  { name: 'outcomes-none', route: `${home}/outcomes`, as: 'sitting' },
];
