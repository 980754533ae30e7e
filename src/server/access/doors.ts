import type { Right } from './rights.ts';

/** `open` to anybody, to anybody `signed in`, or to those who have a right in the company of the address. */
export type Door = 'open' | 'signed in' | Right;

/** `GET` is also the page itself; an action of a form goes by its name; `POST` is one without. */
type Doors = Readonly<Record<string, Door>>;

const open: Doors = { GET: 'open' };

/** Every address of the app, with who may come in. An address that is not here is not there. */
export const doors: Readonly<Record<string, Doors>> = {
  '/': open,
  '/[language].webmanifest': open,
  '/attempts': open,
  '/attempts/[id]': open,
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
  '/written': open,
  '/written/[topic]': open,

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
  '/company/[company]/crews/[crew]': { GET: 'see crews' },
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
  '/company/[company]/people': { GET: 'see people', create: 'change people' },
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
};
