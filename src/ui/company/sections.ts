import type { RoleName } from '#ui/account/role-words.ts';
import { m } from '#ui/messages/generated/messages.js';

type Section = {
  readonly address: string;
  readonly name: () => string;
  readonly roles: readonly RoleName[];
};

/** The parts of a company's records, each with those whom it is for; the server holds the same. */
export const companySections: readonly Section[] = [
  { address: '', name: m.company_home, roles: ['apprentice', 'trainer', 'examiner', 'office'] },
  { address: '/people', name: m.people_title, roles: ['trainer', 'examiner', 'office'] },
  { address: '/crews', name: m.crews_title, roles: ['trainer', 'examiner', 'office'] },
  { address: '/assignments', name: m.assign_title, roles: ['trainer', 'examiner', 'office'] },
  { address: '/applications', name: m.apply_title, roles: ['trainer', 'examiner', 'office'] },
  { address: '/checks', name: m.checks_title, roles: ['examiner'] },
  { address: '/decisions', name: m.decisions_title, roles: ['examiner', 'office'] },
  { address: '/certificates', name: m.cert_title, roles: ['trainer', 'examiner', 'office'] },
  { address: '/board', name: m.board_section, roles: ['trainer', 'examiner', 'office'] },
  { address: '/jobs', name: m.jobs_title, roles: ['office'] },
  { address: '/numbers', name: m.numbers_short, roles: ['trainer', 'examiner', 'office'] },
  { address: '/tokens', name: m.tokens_title, roles: ['office'] },
  { address: '/outcomes', name: m.outcomes_title, roles: ['apprentice', 'trainer'] },
  {
    address: '/certificates/mine',
    name: m.cert_mine,
    roles: ['apprentice', 'trainer', 'examiner', 'office'],
  },
];
