import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { checkBundle } from '#engine/compile/check-bundle.ts';
import { toText } from '#engine/compile/transport.ts';
import { type CheckSheet, merged } from '#engine/exam/check-sheet.ts';
import { quantity } from '#engine/measure/conversion.ts';
import { storeIn } from '#ui/attempts/browser-store.ts';
import { HandsOn } from '#ui/checks/hands-on.svelte.ts';
import { allKept, keepBundle, keepCheck, keptCheck } from '#ui/checks/kept-check.ts';
import { outWords, withUnit } from '#ui/checks/measure-words.ts';
import { takenAlong } from '#ui/checks/taken-along.ts';
import { content } from '../../content/walls.ts';
import { freshCheck as fresh } from './fresh-check.ts';

const bundle = checkBundle(content, 'base-of-wall-installer', 'real-wall')!;
const store = storeIn(() => localStorage);
const point = 'snap-line/done';
const other = 'prime-wall/done';

/** A server that has a sheet of its own, and merges as ours does. */
const server = { sheet: {} as CheckSheet, isThere: true, asked: 0 };

const answer = (body: unknown): Response => new Response(JSON.stringify(body), { status: 200 });

const ask = (_address: unknown, how?: RequestInit): Promise<Response> => {
  if (!server.isThere) return Promise.reject(new TypeError('no signal'));
  server.asked += 1;
  if (how?.method !== 'POST') {
    return Promise.resolve(
      answer({ check: { ...fresh, sheet: server.sheet }, bundle: toText(bundle), isOver: false }),
    );
  }
  const { sheet } = JSON.parse(how.body as string) as { sheet: CheckSheet };
  server.sheet = merged(server.sheet, sheet);
  return Promise.resolve(answer({ sheet: server.sheet }));
};

beforeEach(() => {
  localStorage.clear();
  Object.assign(server, { sheet: {}, isThere: true, asked: 0 });
  vi.stubGlobal('fetch', ask);
});
afterEach(() => vi.unstubAllGlobals());

const work = () => {
  keepCheck(store, fresh);
  keepBundle(store, fresh.id, toText(bundle));
  return new HandsOn(store, fresh, bundle);
};

describe('what is filled in at the wall', () => {
  test('without signal stays on the device, and is sent when there is signal', async () => {
    const mine = work();
    server.isThere = false;
    mine.set(point, 'right');
    await mine.save();
    expect([mine.trouble, mine.isAllSaved]).toEqual(['signal', false]);
    expect(keptCheck(store, fresh.id)?.sheet[point]?.says).toBe('right');
    server.isThere = true;
    await mine.save();
    expect([mine.trouble, mine.isAllSaved]).toEqual([undefined, true]);
    expect(server.sheet[point]?.says).toBe('right');
    await mine.save();
    expect(server.asked).toBe(1);
  });

  test('is merged with what another device sent meanwhile', async () => {
    const mine = work();
    server.sheet = { [other]: { at: '2030-05-01T08:00:00.000Z', says: 'wrong' } };
    mine.set(point, 'right');
    await mine.save();
    expect([mine.says(point), mine.says(other)]).toEqual(['right', 'wrong']);
    expect(Object.keys(server.sheet).toSorted()).toEqual([other, point].toSorted());
  });

  test('opens again without signal as it was left, and with it brought up to date', async () => {
    const mine = work();
    server.isThere = false;
    mine.set(point, 'wrong');
    const again = await takenAlong(store, ask, fresh.id, null);
    expect(again?.says(point)).toBe('wrong');
    server.isThere = true;
    server.sheet = { [other]: { at: '2030-05-01T08:00:00.000Z', says: 'right' } };
    const updated = await takenAlong(store, ask, fresh.id, fresh.company);
    expect([updated?.says(point), updated?.says(other)]).toEqual(['wrong', 'right']);
    expect(updated?.isAllSaved).toBe(false);
    expect(allKept(store).map(({ id }) => id)).toEqual([fresh.id]);
  });

  test('is nothing where neither the device nor the server has it', async () => {
    server.isThere = false;
    expect(await takenAlong(store, ask, 'another', 'a-company')).toBeUndefined();
  });
});

describe('a measure', () => {
  const atLeast = { kind: 'at-least', value: quantity(8, 'in') } as const;

  test.each([
    ['8', '8 in'],
    ['8 1/2', '8 1/2 in'],
    ['8 in', '8 in'],
    ['0\'-8"', '0\'-8"'],
    ['20 cm', '20 cm'],
    ['eight', 'eight'],
  ])('%s stands as %s where inches are asked for', (written, kept) => {
    expect(withUnit(written, atLeast)).toBe(kept);
  });

  test('is told by how much it is out', () => {
    expect(outWords(atLeast, quantity(7, 'in'))).toContain('1 in too little');
    expect(outWords(atLeast, quantity(8, 'in'))).toBeUndefined();
    expect(outWords({ kind: 'at-most', value: quantity(8, 'in') }, quantity(9, 'in'))).toContain(
      '1 in too much',
    );
  });
});
