import { z } from 'zod';
import type { IsoDate } from '#engine/calendar.ts';
import { certificateStates } from '#engine/certificate/state.ts';
import { ok } from '#engine/result.ts';
import * as holdings from '../../certificates/holdings.ts';
import { after, day, endpoint, id, most, pageOf } from '../endpoint.ts';

const certificate = z
  .strictObject({
    id,
    person: id,
    qualification: z.string(),
    title: z.strictObject({ en: z.string(), es: z.string() }),
    state: z
      .enum(certificateStates)
      .describe('What it is today. It holds where it is current or due, and not otherwise.'),
    isRenewed: z.boolean().describe('Whether another goes on from it.'),
    grantedOn: day,
    validUntil: day.describe('The last day on which it holds.'),
    verify: z.string().describe('The address at which anybody reads whether it holds.'),
  })
  .meta({ id: 'Certificate' });

export const certificates = endpoint({
  id: 'listCertificates',
  route: '/api/certificates',
  method: 'GET',
  scope: 'certificates.read',
  summary: 'Certificates that the company granted, in the order of their granting.',
  query: z.strictObject({ person: id.optional().describe('Of this person alone.'), after, most }),
  answer: pageOf(certificate),
  async reply({ db, bearer, at }, { query }) {
    const today = at.slice(0, 10) as IsoDate;
    const { found, next } = await holdings.page(db, bearer.company, { ...query, today });
    const items = found.map(
      ({ scheme, person, title, publicId, state, isRenewed, grantedOn, validUntil, ...row }) => ({
        id: row.id,
        person,
        qualification: scheme,
        title: { en: title.en, es: title.es },
        state,
        isRenewed,
        grantedOn,
        validUntil,
        verify: `/verify/${publicId}`,
      }),
    );
    return ok({ items, next: next ?? null });
  },
});
