import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { fitted } from '#engine/written/fitted.ts';
import { hiddenWall } from '#engine/written/hidden-wall.ts';
import type { Question, QuestionKind } from '#engine/written/question.ts';
import { suspects } from '#engine/inspection/suspects.ts';
import { zoneNames } from '#engine/picture/words.ts';
import { browserStore } from '#ui/attempts/browser-store.ts';
import { language, say } from '#ui/language/language.svelte.ts';
import { kindWords } from '#ui/review/item-words.ts';
import { keptAnswers } from '#ui/written/kept-answers.ts';
import WrittenSheet from '#ui/written/WrittenSheet.svelte';
import { shippedTopic } from '../shipped-content.ts';

const { bundle, shown, shelf } = shippedTopic('faults-and-rework');
const { topic } = bundle;

const questionOf = <K extends QuestionKind>(kind: K) =>
  topic.questions.find((one): one is Extract<Question, { readonly kind: K }> => one.kind === kind)!;

/** The topic with one question alone. */
const show = (question: Question) =>
  render(WrittenSheet, {
    bundle: { ...bundle, topic: { ...topic, questions: [question] }, made: [] },
    shown,
  });

const handIn = () => userEvent.click(screen.getByRole('button', { name: 'Hand in the answer' }));

beforeEach(() => {
  localStorage.clear();
  Element.prototype.scrollIntoView = () => {};
});
afterEach(() => language.choose('en'));

describe('truth', () => {
  test('a wrong choice is told why that very choice is wrong, and what is right', async () => {
    const question = fitted(questionOf('choose-one'), shelf)!;
    if (question.kind !== 'choose-one') throw new Error('another kind');
    show(question);
    await handIn();
    expect(screen.getByText('Nothing is chosen yet.')).toBeInTheDocument();
    const [wrong] = question.wrong;
    await userEvent.click(screen.getByRole('radio', { name: wrong!.say.en }));
    await handIn();
    const verdict = screen.getByRole('group', { name: 'Not right' });
    expect(verdict).toHaveFocus();
    expect(verdict).toHaveTextContent(wrong!.because.en);
    expect(verdict).toHaveTextContent(`Right is: ${question.right.en}`);
    expect(screen.getByText(question.point.en)).toBeInTheDocument();
    expect(keptAnswers(browserStore, topic.id)).toMatchObject([
      { question: question.id, isRight: false },
    ]);
  });

  test('steps are put in order by button, and the focus stays on the step that is moved', async () => {
    const question = fitted(questionOf('order'), shelf)!;
    if (question.kind !== 'order') throw new Error('another kind');
    show(question);
    const rows = () => screen.getAllByRole('listitem');
    for (const [place, step] of question.steps.entries()) {
      for (;;) {
        const at = rows().findIndex((row) => row.textContent.includes(step.en));
        if (at <= place) break;
        const up = within(rows()[at]!).getByRole('button', { name: `Move up: ${step.en}` });
        await userEvent.click(up);
        expect(rows()[at - 1]).toContainElement(document.activeElement as HTMLElement);
      }
    }
    await handIn();
    expect(screen.getByRole('group', { name: 'Right' })).toHaveTextContent(question.because.en);
  });

  test('choosing only some of what is right is right in part, told choice by choice', async () => {
    const question = fitted(questionOf('choose-all'), shelf)!;
    if (question.kind !== 'choose-all') throw new Error('another kind');
    show(question);
    await userEvent.click(screen.getByRole('checkbox', { name: question.right[0]!.en }));
    await handIn();
    const verdict = screen.getByRole('group', { name: 'Right in part' });
    expect(within(verdict).getAllByText('belongs, and you left it out')).toHaveLength(
      question.right.length - 1,
    );
  });

  test('a fault is found on the wall by place, kind and card', async () => {
    const question = questionOf('find-fault');
    const [fault] = hiddenWall(question, shelf)!.faults;
    show(question);
    const { sequence } = hiddenWall(question, shelf)!.attempt;
    const zone = fault!.zones[0]!;
    await userEvent.click(screen.getByRole('button', { name: say(zoneNames[zone]) }));
    await userEvent.click(screen.getByRole('radio', { name: kindWords[fault!.kind]() }));
    const card = suspects(sequence, zone, fault!.kind).find((one) =>
      fault!.cards.some((own) => own === one.card),
    )!;
    await userEvent.click(screen.getByRole('radio', { name: say(card.say) }));
    await handIn();
    expect(screen.getByRole('group', { name: 'Right' })).toHaveTextContent(question.because.en);
    expect(screen.getByText('Found')).toBeInTheDocument();
  });

  test('the whole sheet changes language at once, before and after the answer', async () => {
    const question = fitted(questionOf('choose-one'), shelf)!;
    if (question.kind !== 'choose-one') throw new Error('another kind');
    show(question);
    language.choose('es');
    await userEvent.click(await screen.findByRole('radio', { name: question.right.es }));
    await userEvent.click(screen.getByRole('button', { name: 'Entregar la respuesta' }));
    expect(screen.getByRole('group', { name: 'Correcto' })).toBeInTheDocument();
    expect(screen.getByText(question.point.es)).toBeInTheDocument();
  });

  test('what was answered is forgotten on a press, and brought back on another', async () => {
    const question = questionOf('choose-one');
    show(question);
    await userEvent.click(screen.getAllByRole('radio')[0]!);
    await handIn();
    await userEvent.click(screen.getByRole('button', { name: 'Forget my answers here' }));
    expect(keptAnswers(browserStore, topic.id)).toEqual([]);
    await userEvent.click(screen.getByRole('button', { name: 'Bring them back' }));
    expect(keptAnswers(browserStore, topic.id)).toHaveLength(1);
  });
});
