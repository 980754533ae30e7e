/** An examination from its application to its decision: who sits it, who watches it, who checks by hand. */
import type { Screen } from './screen.ts';
import { working } from './working.ts';

const home = '/company/[company]';
const exam = `${home}/exam/[sitting]`;
const watched = `${home}/sittings/[sitting]`;

export const examScreens: readonly Screen[] = [
  { name: 'exam-home', route: home, as: 'sitting' },
  { name: 'exam-begin', route: exam, as: 'waiting', with: { sitting: 'waiting' } },
  { name: 'exam-written', route: exam, as: 'sitting', with: { sitting: 'written' } },
  { name: 'exam-takeoff', route: exam, as: 'sitting', with: { sitting: 'takeoff' } },
  {
    name: 'exam-wall',
    route: exam,
    as: 'sitting',
    with: { sitting: 'wall' },
    then: working('chooseCard'),
  },
  { name: 'exam-written-result', route: exam, as: 'sat', with: { sitting: 'writtenDone' } },
  {
    name: 'exam-takeoff-result',
    route: exam,
    as: 'sat',
    with: { sitting: 'takeoffDone' },
    then: working('openFirst'),
  },
  {
    name: 'exam-wall-result',
    route: exam,
    as: 'sat',
    with: { sitting: 'wallDone' },
    then: working('openFirst'),
  },
  { name: 'application', route: `${home}/applications/[application]`, as: 'examiner' },
  { name: 'sitting-waiting', route: watched, as: 'examiner', with: { sitting: 'waiting' } },
  { name: 'sitting-open', route: watched, as: 'examiner', with: { sitting: 'written' } },
  { name: 'sitting-released', route: watched, as: 'examiner', with: { sitting: 'writtenDone' } },
  { name: 'checks', route: '/checks', as: 'examiner' },
  { name: 'check-sheet', route: '/checks/[check]', as: 'examiner', query: '?company=[company]' },
  {
    name: 'check-sheet-step',
    route: '/checks/[check]',
    query: '?company=[company]',
    as: 'examiner',
    then: working('openFourth'),
  },
  {
    name: 'check-signed',
    route: '/checks/[check]',
    query: '?company=[company]',
    as: 'examiner',
    with: { check: 'signedCheck' },
  },
];
