import { z } from 'zod';
import { ok } from '#engine/result.ts';
import { roles } from '../../access/roles.ts';
import * as crewList from '../../people/crews.ts';
import * as roll from '../../people/roll.ts';
import { after, endpoint, id, instant, most, pageOf } from '../endpoint.ts';
import { knownPerson } from '../known.ts';

const person = z
  .strictObject({
    id,
    name: z.string(),
    number: z.string().nullable().describe('By which the company knows them.'),
    crew: id.nullable(),
    roles: z.array(z.enum(roles)),
    language: z.string().nullable(),
    leftAt: instant.nullable(),
    email: z.string().nullable().optional().describe('With the scope people.email alone.'),
  })
  .meta({ id: 'Person' });

export const people = endpoint({
  id: 'listPeople',
  route: '/api/people',
  method: 'GET',
  scope: 'people.read',
  summary: 'People of the company, by name.',
  query: z.strictObject({
    crew: id.optional().describe('Of this crew alone.'),
    who: z.enum(['here', 'gone']).default('here').describe('`gone`: those who have left.'),
    after,
    most,
  }),
  answer: pageOf(person),
  async reply({ db, bearer: { company, scopes } }, { query }) {
    const known = await knownPerson(db, company, query.after);
    if (!known.ok) return known;
    const page = await roll.page(db, company, query);
    const items = page.people.map(({ email, crewName: _, canSignIn: __, ...row }) => ({
      ...row,
      roles: [...row.roles],
      ...(scopes.includes('people.email') ? { email } : {}),
    }));
    return ok({ items, next: page.next ?? null });
  },
});

const crew = z
  .strictObject({
    id,
    name: z.string(),
    people: z.int().min(0).describe('How many are in it now.'),
    closedAt: instant.nullable(),
  })
  .meta({ id: 'Crew' });

export const crews = endpoint({
  id: 'listCrews',
  route: '/api/crews',
  method: 'GET',
  scope: 'people.read',
  summary: 'Every crew of the company, those at work first.',
  answer: z.strictObject({ items: z.array(crew) }),
  reply: async ({ db, bearer }) => ok({ items: [...(await crewList.list(db, bearer.company))] }),
});
