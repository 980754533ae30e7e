import { m } from '#ui/messages/generated/messages.js';

export type PersonFault = { readonly field: string; readonly code: string };

const wrong: Readonly<Record<string, () => string>> = {
  name: m.people_name_wrong,
  number: m.people_number_wrong,
  roles: m.people_roles_wrong,
  crew: m.people_crew_wrong,
  language: m.people_language_wrong,
  email: m.people_email_wrong,
};

/** What is wrong with a field, and how to mend it; undefined where nothing is. */
export function faultWords(fault: PersonFault | undefined, field: string): string | undefined {
  if (fault?.field !== field) return undefined;
  if (fault.code === 'TAKEN') return m.people_number_taken();
  if (fault.code === 'LAST_OFFICE') return m.people_last_office();
  if (fault.code === 'ABSENT' && field !== 'crew') return m.people_absent();
  return wrong[field]?.();
}
