/** What anybody sees, in the order in which one would work: what was done stands in the lists after it. */
import type { Screen } from './screen.ts';
import { working } from './working.ts';

const wall = { route: '/practise/[method]', with: { method: 'base-of-wall' } };
const fault = { route: '/find/[method]', with: { method: 'base-of-wall' }, query: '?seed=3' };
const problem = {
  route: '/takeoff/[family]',
  with: { family: 'fasteners-one-bar' },
  query: '?seed=7',
};
// A run as an assignment gives it: whose work it is makes no difference to how it looks.
const run = '?seed=5&questions=3&work=01900000-0000-7000-8000-000000000001';
const written = { route: '/written/[topic]', with: { topic: 'materials-and-tools' } };

export const openScreens: readonly Screen[] = [
  { name: 'start', route: '/start', isFirstRun: true },
  { name: 'home', route: '/' },
  { name: 'sign-in', route: '/sign-in' },
  { name: 'card', route: '/card/[secret]', with: { secret: 'card' } },
  { name: 'practise', route: '/practise' },
  { name: 'practise-wall', ...wall, query: '?mode=own&seed=4' },
  {
    name: 'practise-building',
    ...wall,
    query: '?mode=own&seed=4&corner=inside',
    then: working('buildHalf'),
  },
  {
    name: 'practise-review',
    ...wall,
    query: '?mode=own&seed=4&corner=inside',
    then: working('buildToReview'),
  },
  { name: 'attempts', route: '/attempts' },
  {
    name: 'attempt',
    route: '/attempts',
    then: working('openAttempt'),
    leadsTo: '/attempts/[id]',
  },
  { name: 'find-work', ...fault },
  { name: 'find-noted', ...fault, then: working('noteFault') },
  { name: 'find-marked', ...fault, then: working('markFaults') },
  { name: 'find', route: '/find' },
  { name: 'takeoff', route: '/takeoff' },
  { name: 'takeoff-problem', ...problem },
  { name: 'takeoff-wrong', ...problem, then: working('solveProblem') },
  { name: 'takeoff-history', route: '/takeoff/history' },
  { name: 'takeoff-job-empty', route: '/takeoff/job' },
  {
    name: 'takeoff-job',
    route: '/takeoff/job',
    query: '?families=sheets-straight-run,seam-tape,lap-sealant',
  },
  { name: 'takeoff-worksheet', route: '/takeoff/worksheet' },
  { name: 'written', route: '/written' },
  { name: 'written-question', ...written },
  {
    name: 'written-run',
    ...written,
    query: run,
    then: working('answerOne'),
  },
  {
    name: 'written-run-result',
    ...written,
    query: run,
    then: working('answerAll'),
  },
  { name: 'methods', route: '/methods' },
  { name: 'method', route: '/methods/[id]', with: { id: 'base-of-wall' } },
  { name: 'method-absent', route: '/methods/[id]', with: { id: 'straw-bale' } },
  { name: 'glossary', route: '/glossary' },
  { name: 'search-empty', route: '/search' },
  { name: 'search', route: '/search', query: '?q=primer' },
  { name: 'verify', route: '/verify/[id]', with: { id: 'public' } },
  { name: 'verify-suspended', route: '/verify/[id]', with: { id: 'publicSuspended' } },
  { name: 'verify-absent', route: '/verify/[id]', with: { id: 'AAAAAAAAAAAAAAAAAAAAAA' } },
];
