import { render, screen } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import CandidateAbility from '#ui/exam/CandidateAbility.svelte';
import WatchedSitting from '#ui/exam/WatchedSitting.svelte';

const sitting = {
  answered: 3,
  count: 30,
  match: undefined,
  asks: undefined,
  at: undefined,
  openedAt: undefined,
  absences: [],
  grants: [],
  voidedBecause: undefined,
};
const match = {
  difficulty: { mean: 0.712, spread: 0.11 },
  target: { mean: 0.709, spread: 0.12 },
  isMatched: true,
};

describe('truth', () => {
  test('an ability is told as a share of such questions, with its figures after', () => {
    const value = { outcome: 'converged', ability: -0.42, error: 0.38, answers: 29 } as const;
    render(CandidateAbility, {
      said: { enough: true, value: { ...value, low: 0.547, high: 0.823 } },
    });
    expect(screen.getByText(/between 55 % and 82 % of such questions right/)).toBeVisible();
    expect(
      screen.getByText('Ability −0.42, error 0.38, from 29 answers; 0 is the middle of all.'),
    ).toBeVisible();
  });

  test.each([
    [{ enough: false, have: 12, need: 100 } as const, /it takes 100, there are 12/],
    [
      {
        enough: true,
        value: { outcome: 'not-converged', reason: 'stuck', cycles: 40 },
      } as const,
      /^After 40 rounds/,
    ],
    [undefined, /has a curve yet/],
  ])('where it cannot be told it says why: %#', (said, words) => {
    render(CandidateAbility, { said });
    expect(screen.getByText(words)).toBeInTheDocument();
    expect(screen.queryByText(/Ability/)).toBeNull();
  });

  test('how hard the form is stands beside the bank; of an older plan nothing is said of it', () => {
    const { unmount } = render(WatchedSitting, { sitting });
    expect(screen.queryByText(/Expected on this form/)).toBeNull();
    unmount();
    const { container } = render(WatchedSitting, { sitting: { ...sitting, match } });
    expect(container).toHaveTextContent(
      'Expected on this form: 71 % right; on the whole bank: 71 %. It is as hard as the others.',
    );
    expect(container).toHaveTextContent('by 11 percentage points here, and by 12 in the bank');
  });

  test('a form that could not be drawn near enough is told as such', () => {
    render(WatchedSitting, { sitting: { ...sitting, match: { ...match, isMatched: false } } });
    expect(screen.getByText(/could not be drawn nearer/)).toBeInTheDocument();
  });
});
