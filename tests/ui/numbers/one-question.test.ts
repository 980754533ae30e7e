import { render, screen, within } from '@testing-library/svelte';
import { afterEach, describe, expect, test } from 'vitest';
import { language } from '#ui/language/language.svelte.ts';
import OneQuestion from '#ui/numbers/OneQuestion.svelte';
import type { QuestionNumbers } from '#ui/numbers/number-view.ts';
import {
  estimate,
  harderInSpanish,
  questionWith,
  sound,
  turnedRound,
  verdictOf,
} from './made-numbers.ts';

const show = (changes: Partial<QuestionNumbers> = {}) =>
  render(OneQuestion, {
    company: 'x',
    scheme: { id: 's', title: { en: 'Installer', es: 'Instalador' } },
    part: { id: 'p', title: { en: 'Knowledge', es: 'Conocimientos' } },
    question: questionWith(changes),
  });

const section = (name: string) => within(screen.getByRole('region', { name }));

afterEach(() => language.choose('en'));

describe('truth', () => {
  test('with enough answers the words come first, the figures after', () => {
    show();
    expect(section('What there is to say').getByText('Nothing speaks against it.')).toBeVisible();
    const hard = section('How hard it is');
    expect(hard.getByText('Got it right: 2 in 3.')).toBeInTheDocument();
    expect(hard.getByText(/^67 % · the true share lies between 58 % and 74 %/)).toBeInTheDocument();
    const goes = section('Do those who know more get it right?');
    expect(goes.getByText(/^Yes: who does well/)).toBeInTheDocument();
    const curve = section('Who gets it right');
    expect(
      curve.getByText(/^Slope 1.10 \(error 0.14\), difficulty −0.50 \(error 0.19\)\./),
    ).toHaveTextContent('The computation settled after 17 rounds.');
    expect(curve.getByRole('img', { name: 'One slope for all questions' })).toBeInTheDocument();
    // A slope of its own takes more people: that is said, and no curve is drawn.
    expect(curve.getByText('Too few to say: it takes 250, there are 120.')).toBeInTheDocument();
    expect(curve.queryByRole('img', { name: 'A slope of its own' })).toBeNull();
  });

  test('with too few answers it gives no figure, but how many it takes', () => {
    const few = verdictOf([
      [5, '111'],
      [4, '001'],
    ]);
    show({ verdict: few, curve: { enough: false, have: 9, need: 100 } });
    expect(screen.getByText('Too early to say: 9 answers.')).toBeInTheDocument();
    expect(section('How hard it is').getByText(/it takes 21, there are 9/)).toBeInTheDocument();
    expect(screen.getByText(/it takes 44, there are 9/)).toBeInTheDocument();
    expect(screen.getByText(/it takes 100, there are 9/)).toBeInTheDocument();
    expect(screen.queryByRole('img')).toBeNull();
    expect(screen.queryByText(/\d %/)).toBeNull();
    expect(screen.queryByText(/Slope|Correlation/)).toBeNull();
  });

  test.each([
    ['out-of-cycles', 'The computation came to no end in 500 rounds, so nothing is told from it.'],
    ['slope-runs-away', /^In 500 rounds a curve grew steeper and steeper/],
    ['stuck', /^After 500 rounds the computation stood still/],
  ] as const)('a run that stopped short is told as such, with its rounds: %s', (reason, words) => {
    const value = { outcome: 'not-converged', reason, cycles: 500 } as const;
    show({ curve: { enough: true, value }, ownCurve: { enough: true, value } });
    const curve = section('Who gets it right');
    expect(curve.getAllByText(words)).toHaveLength(2);
    expect(curve.queryByRole('img')).toBeNull();
    expect(curve.queryByText(/Slope \d/)).toBeNull();
  });

  test.each([
    ['all-right', 'Everybody got it right: that gives no curve.'],
    ['all-wrong', 'Nobody got it right: that gives no curve.'],
    ['too-few-answers', /^Too few answers hang together/],
  ] as const)(
    'why a question has no curve is told apart from a run that stopped: %s',
    (reason, words) => {
      const none = { item: 0, answers: 60, estimable: false, reason } as const;
      show({
        curve: { enough: true, value: { outcome: 'converged', cycles: 9, estimate: none } },
        ownCurve: { enough: true, value: { outcome: 'nothing-to-fit' } },
      });
      const curve = section('Who gets it right');
      expect(curve.getByText(words)).toBeInTheDocument();
      expect(curve.getByText(/^There are not two questions/)).toBeInTheDocument();
      expect(curve.queryByRole('img')).toBeNull();
    },
  );

  test('a flagged question says what is wrong and what to do', () => {
    show({ verdict: turnedRound });
    const verdict = section('What there is to say');
    expect(verdict.getByText(/^Works the wrong way round/)).toBeInTheDocument();
    expect(verdict.getByText(/^Look at the key first/)).toBeInTheDocument();
    expect(
      section('Do those who know more get it right?').getByText('No, rather the other way round.'),
    ).toBeInTheDocument();
  });

  test('a question that treats a language differently says which, and by how much', () => {
    show({ verdict: harderInSpanish });
    const words = 'Harder in Spanish than in English for people who are as able.';
    expect(section('What there is to say').getByText(words)).toBeInTheDocument();
    // Odds ratio (70 x 60) / (20 x 30) = 7; times -2.35 its logarithm is -4.57.
    expect(screen.getByText(/^Difference on the delta scale −4.57/)).toBeInTheDocument();
  });

  test('a question that the content has no more is told by its name; Spanish says the same', () => {
    language.choose('es');
    show({
      ask: undefined,
      verdict: sound,
      curve: { enough: true, value: { outcome: 'converged', cycles: 3, estimate } },
    });
    expect(screen.getByText(/turn-up/)).toBeInTheDocument();
    expect(screen.getByText(/El cálculo se asentó después de 3 vueltas\./)).toBeInTheDocument();
  });
});
