/** Who is in the invented company. The surnames are words of the trade: nobody is called that. */
import { pick, type Random, randomFrom, shuffle, whole } from '#engine/random.ts';
import type { Role } from '../access/roles.ts';

const english = [
  'Sam', 'Robin', 'Dana', 'Kit', 'Jude', 'Alex', 'Casey', 'Morgan', 'Toby', 'Nell',
  'Ivy', 'Ross', 'Joan', 'Hugh', 'Beth', 'Carl', 'Gail', 'Owen', 'Ruth', 'Dean',
]; // prettier-ignore
const spanish = [
  'Ana', 'Teo', 'Luz', 'Beto', 'Inés', 'Paco', 'Rosa', 'Chema', 'Nuria', 'Saúl',
  'Elsa', 'Iván', 'Marta', 'Quique', 'Dora', 'Félix', 'Pilar', 'Raúl', 'Alma', 'Hugo',
]; // prettier-ignore
const surnames = [
  'Lintel', 'Sill', 'Parapet', 'Wythe', 'Mortar', 'Shim', 'Girt', 'Soffit', 'Plinth', 'Weep',
  'Cornisa', 'Dintel', 'Zócalo', 'Llana', 'Plomada', 'Junta', 'Nivel', 'Repisa', 'Alero', 'Muro',
]; // prettier-ignore

export type DemoPerson = {
  readonly name: string;
  readonly number: string;
  readonly roles: readonly Role[];
  readonly language: 'en' | 'es';
  /** By place among the crews; none for who works for all of them. */
  readonly crew: number | undefined;
  /** So many days before the day it is made; undefined for who is still there. */
  readonly leftDaysAgo: number | undefined;
  /** In logits, as a simulated learner has it. */
  readonly ability: number;
};

export const crewNames = ['North', 'South', 'East', 'Norte'] as const;

/** The whole company; the first roles come first, so a smaller one has them, too. */
export const wholeSize = 60;

const [offices, trainers, examiners, gone] = [2, 4, 2, 4];

/** The same for the same seed: the office first, then trainers, examiners, apprentices. */
export function demoPeople(seed: string, size: number): readonly DemoPerson[] {
  const random = randomFrom(`${seed}/people`);
  const names = shuffle(
    random,
    [...english, ...spanish].flatMap((first, at) => {
      const language = at < english.length ? ('en' as const) : ('es' as const);
      return surnames.map((last) => ({ name: `${first} ${last}`, language }));
    }),
  );
  return Array.from({ length: size }, (_, at) => {
    const role = roleAt(at);
    return {
      ...names[at]!,
      number: `D-${String(at + 1).padStart(3, '0')}`,
      roles: [role],
      crew: role === 'office' || role === 'examiner' ? undefined : at % crewNames.length,
      leftDaysAgo: at >= size - gone ? 25 + 60 * (size - 1 - at) : undefined,
      ability: role === 'apprentice' ? bell(random) : 2.5,
    };
  });
}

/** So many to each of the company. */
const guestsEach = 4;

/**
 * Who came from elsewhere for an examination alone and left again: they stand in the records as people
 * who are gone, and make the numbers of questions large enough to be looked at.
 */
export function demoGuests(seed: string, size: number): readonly DemoPerson[] {
  const random = randomFrom(`${seed}/guests`);
  const firsts = [...english, ...spanish];
  return Array.from({ length: guestsEach * size }, (_, at) => {
    const first = whole(random, 0, firsts.length - 1);
    return {
      name: `${firsts[first]!} ${pick(random, surnames)}`,
      number: `G-${String(at + 1).padStart(3, '0')}`,
      roles: ['apprentice'],
      language: first < english.length ? 'en' : 'es',
      crew: undefined,
      leftDaysAgo: whole(random, 5, 355),
      ability: bell(random),
    };
  });
}

function roleAt(at: number): Role {
  if (at < offices) return 'office';
  if (at < offices + trainers) return 'trainer';
  return at < offices + trainers + examiners ? 'examiner' : 'apprentice';
}

/** About normal with mean 0.3 and deviation 0.8: twelve even draws added up. */
function bell(random: Random): number {
  let sum = 0;
  for (let draw = 0; draw < 12; draw += 1) sum += (random.next() >>> 0) / 2 ** 32;
  return Math.round((0.3 + 0.8 * (sum - 6)) * 100) / 100;
}
