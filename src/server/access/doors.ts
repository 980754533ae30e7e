import type { Scope } from '#engine/record/token.ts';
import type { Right } from './rights.ts';

/** For programs that send a token which is good for that. */
export type TokenDoor = `token: ${Scope}`;

/**
 * `open` to anybody, to anybody `signed in`, to those who have a right in the company of the address, or to
 * a token.
 */
export type Door = 'open' | 'signed in' | Right | TokenDoor;

/** What a token must be good for; undefined for a door that no token opens. */
export const scopeOf = (door: Door): Scope | undefined =>
  door.startsWith('token: ') ? (door.slice('token: '.length) as Scope) : undefined;

/** `GET` is also the page itself; an action of a form goes by its name; `POST` is one without. */
type Doors = Readonly<Record<string, Door>>;

const open: Doors = { GET: 'open' };

/** Every address of the app, with who may come in. An address that is not here is not there. */
export const doors: Readonly<Record<string, Doors>> = {
  '/': open,
  '/[language].webmanifest': open,
  '/attempts': open,
  '/check': open,
  '/checks': open,
  '/checks/[check]': open,
  '/attempts/[id]': open,
  '/calendar/[secret].ics': open,
  '/content/[revision]/catalogue': open,
  '/content/[revision]/glossary': open,
  '/content/[revision]/methods/[id]': open,
  '/content/[revision]/search': open,
  '/content/[revision]/takeoffs/[id]': open,
  '/content/[revision]/written/[id]': open,
  '/content/current': open,
  '/due': open,
  '/find': open,
  '/find/[method]': open,
  '/glossary': open,
  '/health': open,
  '/issuers/[issuer]': open,
  '/issuers/[issuer]/did.json': open,
  '/keys': open,
  '/keys/[key]': open,
  '/methods': open,
  '/methods/[id]': open,
  '/practise': open,
  '/practise/[method]': open,
  '/search': open,
  '/shell': open,
  '/takeoff': open,
  '/takeoff/[family]': open,
  '/takeoff/history': open,
  '/takeoff/job': open,
  '/takeoff/worksheet': open,
  '/takeoff/worksheet.pdf': open,
  '/verify/[id]': open,
  '/verify/[id].json': open,
  '/written': open,
  '/written/[topic]': open,

  '/api/[...rest]': open,
  '/api/openapi.json': open,
  '/api/assignments': { GET: 'token: assignments.read' },
  '/api/assignments/[assignment]': { GET: 'token: assignments.read' },
  '/api/assignments/[assignment]/standings': { GET: 'token: assignments.read' },
  '/api/attempts': { GET: 'token: attempts.read' },
  '/api/board': { GET: 'token: board.read' },
  '/api/certificates': { GET: 'token: certificates.read' },
  '/api/crews': { GET: 'token: people.read' },
  '/api/people': { GET: 'token: people.read' },

  '/start': { GET: 'open', create: 'open', demo: 'open' },
  '/sign-in': { GET: 'open', POST: 'open' },
  '/card/[secret]': { GET: 'open', fresh: 'open', join: 'open' },
  '/me': open,
  '/account': { GET: 'signed in', password: 'signed in', end: 'signed in', out: 'signed in' },
  '/company': { GET: 'signed in' },
  '/company/[company]': { GET: 'be here' },
  '/company/[company]/attempts': { POST: 'send attempts' },
  '/company/[company]/cards': { GET: 'make crew cards', make: 'make crew cards' },
  '/company/[company]/crews': {
    GET: 'see crews',
    create: 'change crews',
    rename: 'change crews',
    close: 'change crews',
    reopen: 'change crews',
  },
  '/company/[company]/crews/found': { GET: 'see crews' },
  '/company/[company]/crews/[crew]': { GET: 'see crews' },
  '/company/[company]/board': { GET: 'see the board' },
  '/company/[company]/board/[person]': {
    GET: 'see the board',
    declare: 'change certificates',
    remove: 'change certificates',
  },
  '/company/[company]/board/coverage': { GET: 'see the board' },
  '/company/[company]/board/declared': {
    GET: 'change certificates',
    preview: 'change certificates',
    write: 'change certificates',
  },
  '/company/[company]/board/declared/export.csv': { GET: 'export records' },
  '/company/[company]/board/declared/template.csv': { GET: 'change certificates' },
  '/company/[company]/board/export.csv': { GET: 'export records' },
  '/company/[company]/jobs': { GET: 'plan jobs' },
  '/company/[company]/jobs/new': { GET: 'plan jobs', find: 'plan jobs', keep: 'plan jobs' },
  '/company/[company]/jobs/[job]': { GET: 'plan jobs', send: 'plan jobs', close: 'plan jobs' },
  '/company/[company]/report.pdf': { GET: 'export records' },
  '/company/[company]/statements.json': { GET: 'export records' },
  '/company/[company]/tokens': { GET: 'make tokens', make: 'make tokens', revoke: 'make tokens' },
  '/company/[company]/numbers': { GET: 'see statistics' },
  '/company/[company]/numbers/[scheme]/[part]': {
    GET: 'see statistics',
    panel: 'change the question bank',
  },
  '/company/[company]/numbers/[scheme]/[part]/[question]': {
    GET: 'see statistics',
    retire: 'change the question bank',
    back: 'change the question bank',
  },
  '/company/[company]/numbers/panels/[panel]': {
    GET: 'see statistics',
    rate: 'see statistics',
    next: 'change the question bank',
    close: 'change the question bank',
  },
  '/company/[company]/points': { GET: 'be here' },
  '/company/[company]/people': {
    GET: 'see people',
    find: 'change people',
    create: 'change people',
  },
  '/company/[company]/people/[person]': {
    GET: 'see people',
    change: 'change people',
    roles: 'change people',
    move: 'change people',
    leave: 'change people',
    back: 'change people',
    revoke: 'make crew cards',
  },
  '/company/[company]/people/[person]/points': { GET: 'see people' },
  '/company/[company]/people/export.csv': { GET: 'change people' },
  '/company/[company]/people/import': {
    GET: 'change people',
    preview: 'change people',
    write: 'change people',
  },
  '/company/[company]/attempts/[attempt]': {
    GET: 'be here',
    comment: 'decide on attempts',
    again: 'decide on attempts',
  },
  '/company/[company]/certificates': { GET: 'see certificates' },
  '/company/[company]/certificates/mine': { GET: 'be here', show: 'be here', feed: 'be here' },
  '/company/[company]/certificates/[certificate]': {
    GET: 'see certificates',
    change: 'change certificates',
  },
  '/company/[company]/certificates/[certificate]/credential.jwt': { GET: 'be here' },
  '/company/[company]/certificates/[certificate]/paper.pdf': { GET: 'be here' },
  '/company/[company]/applications': { GET: 'see applications', create: 'open applications' },
  '/company/[company]/applications/[application]': { GET: 'see applications', sit: 'invigilate' },
  '/company/[company]/sittings/[sitting]': {
    GET: 'invigilate',
    code: 'invigilate',
    grant: 'invigilate',
    void: 'invigilate',
    release: 'examine',
  },
  '/company/[company]/exam/[sitting]': { GET: 'take exams', begin: 'take exams' },
  '/company/[company]/exam/[sitting]/items/[place]': { GET: 'take exams' },
  '/company/[company]/exam/[sitting]/told': { POST: 'take exams' },
  '/company/[company]/due': { GET: 'be here' },
  '/company/[company]/assignments': { GET: 'see assignments' },
  '/company/[company]/assignments/new': {
    GET: 'assign',
    add: 'assign',
    out: 'assign',
    find: 'assign',
    give: 'assign',
  },
  '/company/[company]/assignments/[assignment]': {
    GET: 'see assignments',
    dates: 'assign',
    withdraw: 'assign',
  },
  '/company/[company]/checks': { GET: 'examine', begin: 'examine' },
  '/company/[company]/checks/[check]': { GET: 'examine', POST: 'examine' },
  '/company/[company]/checks/[check]/sign': { POST: 'examine' },
  '/company/[company]/checks/[check]/photos/[photo]': { GET: 'be here', POST: 'examine' },
  '/company/[company]/decisions': { GET: 'decide on certificates' },
  '/company/[company]/decisions/[application]': {
    GET: 'decide on certificates',
    decide: 'decide on certificates',
    appeal: 'decide on certificates',
    trained: 'decide on certificates',
  },
  '/company/[company]/outcomes': { GET: 'take exams', appeal: 'take exams' },
};
