import { z } from 'zod';
import { qualificationStates } from '#engine/competence/qualification-state.ts';
import { ok } from '#engine/result.ts';
import * as competence from '../../board/board.ts';
import { schemesNow } from '../../board/qualifications.ts';
import { after, day, endpoint, id, most, pageOf } from '../endpoint.ts';
import { knownPerson } from '../known.ts';

const standing = z
  .strictObject({
    qualification: z.string(),
    state: z.enum(qualificationStates),
    certificate: id.nullable().describe('The one that says so.'),
    validUntil: day.nullable().describe('The last day of that certificate.'),
    lastPractised: day.nullable(),
  })
  .meta({ id: 'Standing' });

const row = z
  .strictObject({
    person: id,
    name: z.string(),
    crew: id.nullable(),
    standings: z.array(standing).describe('One for each qualification.'),
  })
  .meta({ id: 'BoardRow' });

export const board = endpoint({
  id: 'readBoard',
  route: '/api/board',
  method: 'GET',
  scope: 'board.read',
  summary: 'The competence board: where each person stands in each qualification today, by crew.',
  query: z.strictObject({
    crew: id.optional().describe('Of this crew alone.'),
    qualification: z.string().max(100).optional().describe('Which one `state` is asked of.'),
    state: z.enum(qualificationStates).optional().describe('In this state alone.'),
    after,
    most,
  }),
  answer: pageOf(row),
  async reply({ db, bearer: { company }, at }, { query }) {
    const known = await knownPerson(db, company, query.after);
    if (!known.ok) return known;
    const schemes = await schemesNow();
    const { rows, next } = await competence.page(db, company, at, schemes, query);
    const items = rows.map(({ id: person, name, crew, cells }) => ({
      person,
      name,
      crew,
      standings: cells.map(({ state, certificate, fade }, place) => ({
        qualification: schemes[place]!.id,
        state,
        certificate: certificate?.id ?? null,
        validUntil: certificate?.validUntil ?? null,
        lastPractised: fade.last ?? null,
      })),
    }));
    return ok({ items, next: next ?? null });
  },
});
