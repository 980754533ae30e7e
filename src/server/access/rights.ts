import type { Role } from './roles.ts';

/** Who may do what in their own company: the one table that every address goes by. */
export const rights = {
  'be here': ['apprentice', 'trainer', 'examiner', 'office'],
  'send attempts': ['apprentice', 'trainer', 'examiner', 'office'],
  'see crews': ['trainer', 'examiner', 'office'],
  'change crews': ['office'],
  'see people': ['trainer', 'examiner', 'office'],
  'change people': ['office'],
  'make crew cards': ['trainer', 'office'],
  'see assignments': ['trainer', 'examiner', 'office'],
  assign: ['trainer'],
  'see attempts': ['trainer', 'examiner', 'office'],
  'decide on attempts': ['trainer'],
  'take exams': ['apprentice', 'trainer', 'examiner', 'office'],
  'see applications': ['trainer', 'examiner', 'office'],
  'open applications': ['office'],
  invigilate: ['examiner', 'office'],
  examine: ['examiner'],
  'decide on certificates': ['examiner', 'office'],
  'see statistics': ['trainer', 'examiner', 'office'],
  'change the question bank': ['examiner'],
  'see certificates': ['trainer', 'examiner', 'office'],
  'change certificates': ['office'],
  'see the board': ['trainer', 'examiner', 'office'],
  'plan jobs': ['office'],
  'export records': ['office'],
  'make tokens': ['office'],
  'see the audit trail': ['office'],
} as const satisfies Readonly<Record<string, readonly Role[]>>;

export type Right = keyof typeof rights;

export const may = (held: readonly Role[], right: Right): boolean =>
  held.some((role) => (rights[right] as readonly Role[]).includes(role));
