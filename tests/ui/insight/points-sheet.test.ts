import { render, screen, within } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import type { KeptAttempt } from '#engine/marking/kept-attempt.ts';
import { pointsOf } from '#engine/tracing/points-of.ts';
import { wallFrom } from '#ui/mockup/wall-address.ts';
import KeptNext from '#ui/insight/KeptNext.svelte';
import { keptPoints } from '#ui/insight/kept-points.ts';
import PointsSheet from '#ui/insight/PointsSheet.svelte';
import { built } from '../../engine/tracing/built.ts';
import { tinyBundle } from '../tiny-content.ts';

const right = built(['prime@0', 'set-edge@0', 'hang@500 | turn-up=8 in']);
const low = built(['prime@0', 'set-edge@0', 'hang@500 | turn-up=1 in']);
const tried = (...all: readonly (typeof right)[]) =>
  all.map((one, at) => ({ ...one, finished: `2030-05-0${at + 1}T12:00:00.000Z` }));

const shown = (...all: readonly (typeof right)[]) =>
  render(PointsSheet, { title: 'Ana', points: pointsOf(tried(...all)), isOwn: true });

const kept = (day: number, more: Partial<KeptAttempt> = {}): KeptAttempt => ({
  id: `${day}`,
  finished: `2030-05-0${day}T12:00:00.000Z`,
  mode: 'own',
  seed: '1',
  help: [],
  revision: tinyBundle.revision,
  score: 100,
  outcome: 'accept',
  attempt: {
    method: 'tiny-wall',
    site: { edge: 'drip' },
    steps: [
      { step: 'prime', minute: 0 },
      { step: 'set-edge', minute: 0 },
      { step: 'hang', settings: { 'turn-up': '1 in' }, minute: 500 },
    ],
  },
  ...more,
});
const open = (id: string) => Promise.resolve(id === 'tiny-wall' ? tinyBundle : undefined);

describe('truth', () => {
  test('each point has words, a rule with its figure, how often it was seen and when', () => {
    shown(right, right, low);
    const ask = tinyBundle.method.steps[2]!.settings[0]!.ask.en;
    const every = screen.getByRole('heading', { name: 'Every key point' }).parentElement!;
    const row = within(every).getByText(ask).closest('li')!;
    expect(row).toHaveTextContent('right in 2 of 3, last May 3, 2030');
    expect(row).toHaveTextContent('nearly');
    // By hand after right, right, wrong of .3 .2 .1 .2: 0.9382 before, 0.655 after, 0.724 learnt.
    expect(within(row).getByRole('img')).toHaveAccessibleName('72 % of a rule from 0 to 100');
    const wait = within(every).getByText('The wait after it').closest('li')!;
    expect(wait).toHaveTextContent('sure');
    expect(wait).toHaveTextContent('right in 3 of 3');
  });

  test('what is next leads to the stretch of the wall where it is done', () => {
    shown(right, right, low);
    const link = screen.getByRole('link', { name: 'Practise this stretch: Hang the sheet' });
    const address = new URL(link.getAttribute('href')!, 'http://site');
    expect(address.pathname).toBe('/practise/tiny-wall');
    expect(wallFrom(tinyBundle.method, address.searchParams)).toMatchObject({
      ok: true,
      value: { site: { edge: 'drip' }, mode: 'own', seed: '4', part: ['set-edge', 'hang'] },
    });
  });

  test('where all is sure, it says so; how it is estimated stands below with its numbers', () => {
    shown(right, right, right);
    expect(screen.getByText(/^Everything seen so far is sure/)).toBeVisible();
    expect(screen.getByText('5 of 5')).toBeVisible();
    const how = screen.getByRole('heading', { name: 'How this is estimated' }).parentElement!;
    expect(how).toHaveTextContent('Known before the first wall 30 %, learnt from one wall 20 %');
    expect(how).toHaveTextContent('Sure is 95 % or more');
  });

  test('who built nothing without hints is told what to do', () => {
    shown();
    expect(screen.getByText('No wall built without hints yet')).toBeVisible();
    expect(screen.getByRole('link', { name: 'Start practising' })).toBeVisible();
  });

  test('a browser works the same out of what it keeps, in the order it was built', async () => {
    const good = { ...kept(1), attempt: { ...kept(1).attempt } };
    const { points, unread } = await keptPoints([kept(2), good], open);
    expect(unread).toBe(0);
    expect(points.attempts).toBe(2);
    expect(points.methods[0]!.points.at(-1)).toMatchObject({
      seen: 2,
      right: 0,
      lastSeen: '2030-05-02T12:00:00.000Z',
    });
  });

  test('what was built with hints is not counted, and what cannot be read is told', async () => {
    const gone = kept(3, { attempt: { ...kept(3).attempt, method: 'gone' } });
    const guided = kept(2, { mode: 'guided' });
    const found = await keptPoints([kept(1), guided, gone], open);
    expect(found).toMatchObject({ unread: 1, points: { attempts: 1 } });
    render(KeptNext, { kept: [kept(1), guided, gone], open });
    expect(await screen.findByText('What to practise next')).toBeVisible();
    expect(screen.getByText(/^1 attempt is left out/)).toBeVisible();
  });
});
