import { createHash } from 'node:crypto';
import { sql } from 'kysely';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { photoLine } from '#engine/exam/check-sheet.ts';
import { save } from '#server/checks/checks.ts';
import { keepPhoto, largestPhoto, mostPhotos, photo } from '#server/checks/photos.ts';
import { freshId } from '#server/fresh-id.ts';
import { erase } from '#server/people/erasure.ts';
import { exportPerson } from '#server/people/export.ts';
import { freshRecords, kinds, type Records } from '../records.ts';
import { applied, begun, days, filled, signed, type Signer, site, type Site } from './examined.ts';
import { jpeg, png, secrets } from './pictures.ts';

describe.each(kinds)('%s', (kind) => {
  let records: Records;
  let on: Site;
  let ed: Signer;
  let check: string;
  beforeAll(async () => {
    records = await freshRecords(kind);
  });
  afterAll(() => records.drop());
  beforeEach(async () => {
    on = await site(records);
    ed = await on.signer();
    check = await begun(on, ed, await applied(on));
  });

  const keep = (id: string, bytes: Uint8Array = jpeg(), by = ed) =>
    keepPhoto(on.db, by.act, { check, id, bytes });
  const bytesOf = async (id: string) => {
    const found = await photo(on.db, on.company, check, id);
    return found && Buffer.from(found.bytes);
  };
  const onSheet = (id: string, says: string | null = '', day = 0) => ({
    [photoLine(id)]: { at: days(day), says },
  });

  test('it is kept without what the camera wrote, once, and read back byte by byte', async () => {
    const id = freshId();
    expect(await keep(id)).toEqual({ ok: true, value: 'now' });
    expect(await keep(id, png())).toEqual({ ok: true, value: 'before' });
    const kept = (await bytesOf(id))!;
    expect(kept.length).toBeGreaterThan(100);
    for (const secret of secrets) expect(kept.toString('latin1')).not.toContain(secret);
    const row = await on.db
      .selectFrom('check_photo')
      .select(['type', 'size', 'digest'])
      .where('id', '=', id)
      .executeTakeFirst();
    const digest = createHash('sha256').update(kept).digest('hex');
    expect(row).toEqual({ type: 'image/jpeg', size: kept.length, digest });
  });

  test('what is too large, or no picture, is refused', async () => {
    const behind = Buffer.concat([jpeg(), Buffer.alloc(largestPhoto)]);
    expect(await keep(freshId(), behind)).toEqual({ ok: false, error: 'TOO_LARGE' });
    expect(await keep(freshId(), Buffer.from('<svg/>'))).toEqual({
      ok: false,
      error: 'UNKNOWN_KIND',
    });
    expect(await keep('../photo')).toEqual({ ok: false, error: 'ABSENT' });
  });

  test('there are at most so many', async () => {
    const ids = Array.from({ length: mostPhotos }, freshId);
    const all = await Promise.all(ids.map((id) => keep(id)));
    expect(all.every((one) => one.ok)).toBe(true);
    expect(await keep(freshId())).toEqual({ ok: false, error: 'TOO_MANY' });
    expect(await keep(ids[0]!)).toEqual({ ok: true, value: 'before' });
  });

  test('only its examiner adds one', async () => {
    const eva = await on.signer('Eva');
    expect(await keep(freshId(), jpeg(), eva)).toEqual({ ok: false, error: 'ABSENT' });
    const id = freshId();
    await keep(id);
    const other = await site(records);
    expect(await photo(other.db, other.company, check, id)).toBeUndefined();
  });

  test('signed with those on the sheet, by their digests; one that has not arrived holds it up', async () => {
    const [first, second, stray] = [freshId(), freshId(), freshId()].toSorted() as [
      string,
      string,
      string,
    ];
    await keep(first);
    await keep(stray);
    const sheet = { ...(await filled(on, check)), ...onSheet(first), ...onSheet(second) };
    expect(await signed(on, ed, { id: check, sheet })).toEqual({
      ok: false,
      error: [{ code: 'PHOTOS_MISSING', photos: [second] }],
    });
    await keep(second, png());
    expect((await signed(on, ed, { id: check, sheet })).ok).toBe(true);
    expect(await bytesOf(stray)).toBeUndefined();
    const row = await on.db
      .selectFrom('hands_on_check')
      .select('detail')
      .where('id', '=', check)
      .executeTakeFirstOrThrow();
    const { photos } = JSON.parse(row.detail!) as { photos: { id: string; digest: string }[] };
    expect(photos.map(({ id }) => id)).toEqual([first, second]);
    const digest = createHash('sha256')
      .update((await bytesOf(second))!)
      .digest('hex');
    expect(photos[1]!.digest).toBe(digest);
  });

  test('taken back before the signature it goes', async () => {
    const id = freshId();
    await keep(id);
    await save(on.db, ed.act, { id: check, sheet: onSheet(id) });
    expect(await bytesOf(id)).toBeDefined();
    const act = { ...ed.act, at: days(1) };
    await save(on.db, act, { id: check, sheet: onSheet(id, null, 0.5) });
    expect(await bytesOf(id)).toBeUndefined();
  });

  describe('once signed', () => {
    const signedWith = async (id: string) => {
      await keep(id);
      const sheet = { ...(await filled(on, check)), ...onSheet(id) };
      expect((await signed(on, ed, { id: check, sheet })).ok).toBe(true);
    };

    test('no photo is added, changed or taken away', async () => {
      const id = freshId();
      await signedWith(id);
      expect(await keep(freshId())).toEqual({ ok: false, error: 'SIGNED' });
      const tried = [
        sql`update check_photo set type = 'image/png' where id = ${id}`,
        sql`delete from check_photo where id = ${id}`,
        sql`insert into check_photo select ${freshId()}, check_id, company_id, type, bytes, size, digest, kept_at
          from check_photo where id = ${id}`,
      ];
      for (const one of tried) await expect(one.execute(on.db)).rejects.toThrow('never changes');
    });

    test('an export holds it, and erasing the candidate takes it away', async () => {
      const id = freshId();
      await signedWith(id);
      const kept = (await bytesOf(id))!.toString('base64');
      const { person } = on.candidate.by;
      const before = await exportPerson(on.db, on.company, person);
      expect(before?.checks).toMatchObject([{ id: check, photos: [{ id, data: kept }] }]);
      const doer = { company: on.company, actor: on.office.by.person, at: days(1) };
      expect((await erase(on.db, doer, person)).ok).toBe(true);
      expect(await bytesOf(id)).toBeUndefined();
      const left = await on.db
        .selectFrom('hands_on_check')
        .select('outcome')
        .where('id', '=', check)
        .executeTakeFirst();
      expect(left).toEqual({ outcome: 'passed' });
    });
  });
});
