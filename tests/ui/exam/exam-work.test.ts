import { beforeEach, describe, expect, test } from 'vitest';
import type { Store } from '#ui/attempts/browser-store.ts';
import { ExamWork } from '#ui/exam/exam-work.svelte.ts';
import type { Clock, Receipt, Told } from '#ui/exam/telling.ts';

const clock: Clock = { phase: 'open', left: 600_000, isOver: false };
const places = ['a', 'b', 'c'].map((key) => ({ key, isAnswered: key === 'a' }));

let kept: Map<string, unknown>;
let server: { readonly had: Told[]; isAway: boolean; says: (told: Told) => Receipt };
let now: number;

const store = (): Store => ({
  read: (name) => kept.get(name),
  write: (name, value) => (kept.set(name, JSON.parse(JSON.stringify(value))), true),
  remove: (name) => void kept.delete(name),
  names: () => [...kept.keys()],
});

const work = (sequence = 2) =>
  new ExamWork(
    { id: 'one', clock, places, sequence },
    {
      store: store(),
      now: () => now,
      tell: (told) => {
        if (server.isAway) return Promise.resolve(undefined);
        server.had.push(...told);
        return Promise.resolve({ receipts: told.map(server.says), clock });
      },
    },
  );

beforeEach(() => {
  kept = new Map();
  server = { had: [], isAway: false, says: () => ({ as: 'taken' }) };
  now = 0;
});

describe('truth', () => {
  test('an answer is sent at once and marked as saved', async () => {
    const tab = work();
    expect(tab.states).toEqual({ a: 'saved' });
    await tab.answer('b', '1');
    expect(tab.states).toEqual({ a: 'saved', b: 'saved' });
    expect(server.had).toMatchObject([{ kind: 'answered', key: 'b', value: '1', sequence: 2 }]);
    expect(kept.size).toBe(0);
  });

  test('without signal answers wait on the device, and a later page sends them with their ids', async () => {
    server.isAway = true;
    const tab = work();
    await tab.answer('b', '1');
    await tab.answer('c', '2');
    expect(tab.states).toMatchObject({ b: 'kept', c: 'kept' });
    expect([tab.isAway, tab.valueOf('c')]).toEqual([true, '2']);
    const ids = tab.waiting.map((one) => (one.kind === 'answered' ? one.id : ''));
    server.isAway = false;
    const later = work();
    expect(later.states).toMatchObject({ b: 'kept', c: 'kept' });
    await later.send();
    expect(server.had.map((one) => (one.kind === 'answered' ? one.id : ''))).toEqual(ids);
    expect(later.states).toEqual({ a: 'saved', b: 'saved', c: 'saved' });
    await later.answer('b', '3');
    expect(server.had.at(-1)).toMatchObject({ sequence: 4 });
  });

  test('what came too late stays on the device, and is sent again once there is time', async () => {
    server.says = () => ({ refused: 'late' });
    const tab = work();
    await tab.answer('b', '1');
    expect([tab.states['b'], tab.waiting.length]).toEqual(['late', 1]);
    server.says = () => ({ as: 'taken' });
    await tab.ask();
    expect([tab.states['b'], tab.waiting.length]).toEqual(['saved', 0]);
  });

  test('it is not handed in while answers wait', async () => {
    server.isAway = true;
    const tab = work();
    await tab.answer('b', '1');
    expect(await tab.handIn()).toBe(false);
    expect(server.had).toEqual([]);
  });

  test('the time left follows a clock that nobody sets, from what the server last said', async () => {
    const tab = work();
    now = 5000;
    tab.tick();
    expect(tab.left).toBe(595_000);
    await tab.ask();
    expect(tab.left).toBe(600_000);
  });
});
