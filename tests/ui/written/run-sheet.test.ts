import { render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { beforeEach, expect, test } from 'vitest';
import { fitted } from '#engine/written/fitted.ts';
import type { Question } from '#engine/written/question.ts';
import { runOf } from '#engine/written/run.ts';
import { browserStore } from '#ui/attempts/browser-store.ts';
import { keptOf, markOf } from '#ui/sending/marks.ts';
import { keptAnswers } from '#ui/written/kept-answers.ts';
import { runAddress, runFrom, unfinishedRun } from '#ui/written/run-address.ts';
import RunSheet from '#ui/written/RunSheet.svelte';
import { shippedTopic } from '../shipped-content.ts';

const { bundle, shown, shelf } = shippedTopic('safety');
type One = Extract<Question, { readonly kind: 'choose-one' }>;
const ofOne = bundle.topic.questions.filter((one): one is One => one.kind === 'choose-one');
const topic = { ...bundle.topic, questions: ofOne };
const work = '01890a5d-ac96-774b-bcce-b302099a8057';
const address = { topic: topic.id, seed: '5', count: 2, work };
const asked = runOf(topic, address, shelf).map((question) => fitted(question, shelf) as One);

const show = () => render(RunSheet, { bundle: { ...bundle, topic }, shown, address });

async function answer(choice: string) {
  await userEvent.click(screen.getByRole('radio', { name: choice }));
  await userEvent.click(screen.getByRole('button', { name: 'Hand in the answer' }));
}

beforeEach(() => {
  localStorage.clear();
  Element.prototype.scrollIntoView = () => {};
});

test('an address says all of a run, and one that asks for none practises', () => {
  const { searchParams } = new URL(runAddress(address), 'http://here');
  expect(runFrom(topic.id, searchParams)).toEqual(address);
  for (const changed of ['questions=0', 'questions=41', 'work=x', 'seed=%00']) {
    const [name, value] = changed.split('=') as [string, string];
    const other = new URLSearchParams(searchParams);
    other.set(name, decodeURIComponent(value));
    expect(runFrom(topic.id, other)).toBeUndefined();
  }
});

test('each question is answered once, kept at once, and the whole waits to be sent', async () => {
  const { unmount } = show();
  await answer(asked[0]!.right.en);
  expect(screen.getByRole('group', { name: 'Right' })).toHaveFocus();
  const begun = unfinishedRun(browserStore, work);
  expect(begun).toMatchObject({ seed: '5', count: 2, answers: [{ kind: 'choose-one' }] });
  expect(markOf(browserStore, begun!.id)).toBeUndefined();
  unmount();

  show();
  expect(await screen.findByText(asked[1]!.ask.en)).toBeInTheDocument();
  await answer(asked[1]!.wrong[0]!.say.en);
  await userEvent.click(screen.getByRole('button', { name: 'See what it comes to' }));
  expect(screen.getByText('1 of 2 wholly right.')).toBeInTheDocument();
  expect(unfinishedRun(browserStore, work)).toBeUndefined();
  expect(markOf(browserStore, begun!.id)).toMatchObject({ kind: 'written', state: 'waiting' });
  expect(keptOf(browserStore, 'written', begun!.id)).toMatchObject({ work, topic: topic.id });
  expect(keptAnswers(browserStore, topic.id).map(({ isRight }) => isRight)).toEqual([true, false]);
});
