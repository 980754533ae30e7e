/** Whose papers and pictures somebody gets to see: their own, and those of others by their role alone. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Role, roles } from '#server/access/roles.ts';
import { paperOf } from '#server/certificates/downloads.ts';
import { keepPhoto, photoFor } from '#server/checks/photos.ts';
import { freshId } from '#server/fresh-id.ts';
import type { Act } from '#server/people/member.ts';
import { granted } from '../certificates/granted.ts';
import { applied, begun, site, type Signer, type Site } from '../checks/examined.ts';
import { jpeg } from '../checks/pictures.ts';
import { freshRecords, kinds, type Records } from '../records.ts';

const origin = 'https://underlap.example';

/** Who may see what others hold; an apprentice sees no more than their own. */
const seesCertificates: readonly Role[] = ['trainer', 'examiner', 'office'];
const seesApplications: readonly Role[] = ['trainer', 'examiner', 'office'];

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let on: Site;
  let examiner: Signer;
  let certificate: string;
  let check: string;
  const photo = freshId();
  beforeAll(async () => {
    records = await freshRecords(kind);
    on = await site(records);
    examiner = await on.signer();
    check = await begun(on, examiner, await applied(on));
    const kept = await keepPhoto(on.db, examiner.act, { check, id: photo, bytes: jpeg() });
    if (!kept.ok) throw new Error(kept.error);
    certificate = await granted(on.db, on.office, { person: on.candidate.by.person });
  });
  afterAll(() => records.drop());

  // The credential, both PDFs: each is made of this paper, or not at all.
  const paper = async ({ by }: Act) =>
    (await paperOf(on.db, by, certificate, origin)) !== undefined;
  const picture = async ({ by }: Act) => (await photoFor(on.db, by, check, photo)) !== undefined;

  test('who holds a certificate gets its papers, and who is shown gets the picture', async () => {
    expect([await paper(on.candidate), await picture(on.candidate)]).toEqual([true, true]);
  });

  test('who took the picture gets it', async () => {
    expect(await picture(examiner.act)).toBe(true);
  });

  test.each(roles)('a colleague who is %s gets what the role lets them see', async (role) => {
    const colleague = await on.person([role], 'Colleague');
    expect(await paper(colleague)).toBe(seesCertificates.includes(role));
    expect(await picture(colleague)).toBe(seesApplications.includes(role));
  });

  test('nobody of another company gets either, whatever their roles', async () => {
    const other = await site(records);
    const stranger = await other.person(roles, 'Stranger');
    expect([await paper(stranger), await picture(stranger)]).toEqual([false, false]);
  });
});
