import { render, screen } from '@testing-library/svelte';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import ExamSheet from '#ui/exam/ExamSheet.svelte';
import type { Told } from '#ui/exam/telling.ts';

const clock = { phase: 'open', left: 600_000, isOver: false };
const sitting = {
  id: 'one',
  clock,
  places: [{ key: 'a', isAnswered: false }],
  sequence: 1,
};

let told: Told[];
let isAway: boolean;

/** The server, as the sheet hears it. */
const server: typeof fetch = (_address, request) => {
  if (isAway) return Promise.reject(new TypeError('no signal'));
  const { told: list } = JSON.parse(request!.body as string) as { told: Told[] };
  told.push(...list);
  return Promise.resolve(Response.json({ receipts: list.map(() => ({ as: 'taken' })), clock }));
};

let seen: DocumentVisibilityState;

function goes(state: DocumentVisibilityState): void {
  seen = state;
  document.dispatchEvent(new Event('visibilitychange'));
}

const kinds = () => told.map(({ kind }) => kind);

beforeEach(() => {
  [told, isAway, seen] = [[], false, 'visible'];
  localStorage.clear();
  vi.stubGlobal('fetch', server);
  Object.defineProperty(document, 'visibilityState', { configurable: true, get: () => seen });
});
afterEach(() => {
  vi.unstubAllGlobals();
  Reflect.deleteProperty(document, 'visibilityState');
});

describe('truth', () => {
  test('a page that is left and come back to is told to the server, each by its tab', async () => {
    render(ExamSheet, { home: '/exam', sitting, first: undefined });
    goes('hidden');
    await vi.waitFor(() => expect(kinds()).toEqual(['left-page']));
    goes('visible');
    await vi.waitFor(() => expect(kinds()).toEqual(['left-page', 'came-back']));
    const [left, back] = told;
    expect(left).toHaveProperty('tab', expect.stringMatching(/\S/));
    expect(back).toHaveProperty('tab', (left as { tab: string }).tab);
    // It is recorded, not punished: the questions stay as they are.
    expect(screen.queryByRole('alert')).toBeNull();
  });

  test('without signal it waits on the device, and goes once there is signal', async () => {
    isAway = true;
    render(ExamSheet, { home: '/exam', sitting, first: undefined });
    goes('hidden');
    goes('visible');
    const waiting = () => JSON.parse(localStorage.getItem('exam-one') ?? '[]') as Told[];
    await vi.waitFor(() =>
      expect(waiting().map(({ kind }) => kind)).toEqual(['left-page', 'came-back']),
    );
    expect(told).toEqual([]);
    // The sending that failed is over by then.
    await new Promise((resolve) => setTimeout(resolve));
    isAway = false;
    window.dispatchEvent(new Event('online'));
    await vi.waitFor(() => expect(kinds()).toEqual(['left-page', 'came-back']));
    await vi.waitFor(() => expect(waiting()).toEqual([]));
  });

  test('a sheet that is gone listens no more', async () => {
    const { unmount } = render(ExamSheet, { home: '/exam', sitting, first: undefined });
    unmount();
    goes('hidden');
    await new Promise((resolve) => setTimeout(resolve));
    expect(told).toEqual([]);
  });
});
