import { m } from '#ui/messages/generated/messages.js';

/** The parts of the set, in the order a newcomer needs them. */
export const sections = [
  { address: '/practise', name: m.section_practise },
  { address: '/takeoff', name: m.section_takeoff },
  { address: '/written', name: m.section_written },
  { address: '/methods', name: m.section_methods },
  { address: '/glossary', name: m.section_glossary },
  { address: '/search', name: m.section_search },
] as const;

/** What whoever is signed in comes back to: the company's records, or for an apprentice what is due. */
export const ownSection = (roles: readonly string[]) =>
  roles.some((role) => role !== 'apprentice')
    ? ({ address: '/company', name: m.section_company } as const)
    : ({ address: '/due', name: m.section_due } as const);

export const isWithin = (pathname: string, section: string): boolean =>
  pathname === section || pathname.startsWith(`${section}/`);
