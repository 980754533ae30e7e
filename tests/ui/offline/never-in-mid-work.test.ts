/** A newer version waits all along: it is announced before the work and after it, never in between. */
import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { checkBundle } from '#engine/compile/check-bundle.ts';
import { toText } from '#engine/compile/transport.ts';
import type { Question } from '#engine/written/question.ts';
import { fitted } from '#engine/written/fitted.ts';
import { runOf } from '#engine/written/run.ts';
import { browserStore } from '#ui/attempts/browser-store.ts';
import HandsOnSheet from '#ui/checks/HandsOnSheet.svelte';
import { keepBundle, keepCheck } from '#ui/checks/kept-check.ts';
import ExamSheet from '#ui/exam/ExamSheet.svelte';
import FindSheet from '#ui/find/FindSheet.svelte';
import { wallToFind } from '#ui/find/wall-to-find.ts';
import ProblemSheet from '#ui/takeoff/ProblemSheet.svelte';
import RunSheet from '#ui/written/RunSheet.svelte';
import { freshCheck as fresh } from '../checks/fresh-check.ts';
import { content } from '../../content/walls.ts';
import { shippedBundle, shippedTopic } from '../shipped-content.ts';
import { rightAnswer, tinyProblem, tinyTakeoffBundle } from '../takeoff/tiny-takeoff.ts';
import { newerWaiting } from './newer-waiting.ts';

let newer: ReturnType<typeof newerWaiting>;

beforeEach(() => {
  localStorage.clear();
  Object.assign(Element.prototype, { scrollIntoView: () => {} });
  window.scrollTo = () => {};
  // Without signal.
  vi.stubGlobal('fetch', () => Promise.reject(new TypeError('no signal')));
  newer = newerWaiting();
});
afterEach(() => {
  newer.end();
  vi.unstubAllGlobals();
});

const press = (name: string | RegExp) => userEvent.click(screen.getByRole('button', { name }));

test('an examination, until its time is over', async () => {
  expect(await newer.isAnnounced()).toBe(true);
  const clock = { phase: 'open', left: 600_000, isOver: false };
  const sitting = { id: 'one', clock, places: [{ key: 'a', isAnswered: false }], sequence: 1 };
  const { unmount } = render(ExamSheet, { home: '/here', sitting, first: undefined });
  expect(await newer.isAnnounced()).toBe(false);
  unmount();
  expect(await newer.isAnnounced()).toBe(true);
  const over = { ...sitting, clock: { ...clock, left: 0 } };
  render(ExamSheet, { home: '/here', sitting: over, first: undefined });
  expect(await newer.isAnnounced()).toBe(true);
});

test('a check at the wall, while it is filled in', async () => {
  const bundle = checkBundle(content, 'base-of-wall-installer', 'real-wall')!;
  keepBundle(browserStore, fresh.id, toText(bundle));
  for (const isOver of [false, true]) {
    keepCheck(browserStore, { ...fresh, isOver });
    const { unmount } = render(HandsOnSheet, { id: fresh.id, company: null });
    await screen.findByRole('heading', { level: 1 });
    expect(await newer.isAnnounced()).toBe(isOver);
    unmount();
  }
});

test('a wall that is looked over, from the first place on', async () => {
  render(FindSheet, { wall: wallToFind(shippedBundle('base-of-wall'), '7')!, seed: '7' });
  expect(await newer.isAnnounced()).toBe(true);
  const places = screen.getByRole('group', { name: /^Where/ });
  await userEvent.click(within(places).getAllByRole('button')[0]!);
  expect(await newer.isAnnounced()).toBe(false);
  await press(/^Hand it in/);
  expect(await newer.isAnnounced()).toBe(true);
});

test('a problem, from the first figure to the last', async () => {
  const instance = tinyProblem();
  const address = { family: 'tiny', seed: '5', form: 'entry', among: 'this' } as const;
  render(ProblemSheet, { bundle: tinyTakeoffBundle, instance, address, known: ['tiny'] });
  expect(await newer.isAnnounced()).toBe(true);
  for (const place of instance.parts.keys()) {
    const field = screen.queryByRole('textbox', { name: 'Your answer' });
    const right = rightAnswer(instance, place);
    if (field) await userEvent.type(field, right);
    else await userEvent.click(screen.getByRole('radio', { name: right }));
    expect(await newer.isAnnounced()).toBe(false);
    await press(/^Check/);
    if (place < instance.parts.length - 1) await press('Next part');
  }
  expect(await newer.isAnnounced()).toBe(true);
});

test('a run of questions, from the first answer to the last', async () => {
  type One = Extract<Question, { readonly kind: 'choose-one' }>;
  const { bundle, shown, shelf } = shippedTopic('safety');
  const questions = bundle.topic.questions.filter((one): one is One => one.kind === 'choose-one');
  const topic = { ...bundle.topic, questions };
  const work = '01890a5d-ac96-774b-bcce-b302099a8057';
  const address = { topic: topic.id, seed: '5', count: 2, work };
  render(RunSheet, { bundle: { ...bundle, topic }, shown, address });
  expect(await newer.isAnnounced()).toBe(true);
  const told: boolean[] = [];
  for (const question of runOf(topic, address, shelf)) {
    const { right } = fitted(question, shelf) as One;
    await userEvent.click(screen.getByRole('radio', { name: right.en }));
    await press('Hand in the answer');
    told.push(await newer.isAnnounced());
    if (told.length < 2) await press('Next question');
  }
  expect(told).toEqual([false, true]);
});
