import { render, screen } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import { panelVerdict } from '#engine/statistics/examiners-verdict.ts';
import PanelSheet from '#ui/numbers/PanelSheet.svelte';

/** Five judges of ten questions; this project's own example: a cut of 6.82 with an error of 0.267. */
const ratings = [
  [0.8, 0.6, 0.9, 0.5, 0.7, 0.75, 0.6, 0.85, 0.65, 0.55],
  [0.85, 0.65, 0.9, 0.55, 0.7, 0.8, 0.6, 0.9, 0.7, 0.6],
  [0.75, 0.55, 0.85, 0.45, 0.65, 0.7, 0.55, 0.8, 0.6, 0.5],
  [0.8, 0.7, 0.95, 0.6, 0.75, 0.8, 0.65, 0.9, 0.7, 0.65],
  [0.7, 0.5, 0.85, 0.4, 0.6, 0.7, 0.5, 0.75, 0.6, 0.45],
];

function cutOf(rows: typeof ratings) {
  const verdict = panelVerdict(rows);
  if (!verdict.enough) return verdict;
  if (!verdict.value.ok) throw new Error('no cut');
  return { enough: true as const, value: verdict.value.value };
}

const items = Array.from({ length: 10 }, (_, place) => ({
  item: `q${place}`,
  ask: { en: `Question ${place}`, es: `Pregunta ${place}` },
  own: undefined,
  mean: undefined,
}));

const show = (changes: object = {}, more: object = {}) =>
  render(PanelSheet, {
    company: 'x',
    panel: {
      scheme: { id: 's', title: { en: 'Installer', es: 'Instalador' } },
      part: { id: 'p', title: { en: 'Knowledge', es: 'Conocimientos' } },
      passMark: 0.7,
      round: 2,
      isClosed: false,
      judges: 5,
      hasRated: false,
      items,
      cut: cutOf(ratings),
      ...changes,
    },
    mayLead: false,
    wrong: undefined,
    given: {},
    ...more,
  });

describe('truth', () => {
  test('five judges give a cut with its error, beside the mark of the scheme', () => {
    show();
    expect(
      screen.getByText('The judges do not speak against the pass mark of the scheme.'),
    ).toBeVisible();
    expect(
      screen.getByText(/^6\.8 of 10 questions \(68 %\), with an error of 0\.3/),
    ).toHaveTextContent('the scheme asks for 70 %');
  });

  test.each([
    [0.9, 'The judges put it lower than the scheme does.'],
    [0.4, 'The judges put it higher than the scheme does.'],
  ])('a mark of %d that lies outside of the error is told', (passMark, words) => {
    show({ passMark });
    expect(screen.getByText(words)).toBeInTheDocument();
  });

  test('with four judges there is no cut, but how many it takes', () => {
    show({ cut: cutOf(ratings.slice(1)), judges: 4 });
    expect(screen.getByText('Too few to say: it takes 5, there are 4.')).toBeInTheDocument();
    expect(screen.queryByRole('img')).toBeNull();
    expect(screen.queryByText(/with an error of/)).toBeNull();
  });

  test('each question takes a number, and what was written stays when one is missing', () => {
    show({ cut: undefined }, { wrong: 'INCOMPLETE', given: { q0: '85', q1: 'most' } });
    expect(screen.getAllByRole('textbox')).toHaveLength(10);
    expect(screen.getByRole('textbox', { name: 'Question 0' })).toHaveValue('85');
    expect(screen.getByRole('textbox', { name: 'Question 1' })).toHaveValue('most');
    expect(screen.getByText('A question has no number from 0 to 100')).toBeInTheDocument();
    expect(screen.queryByRole('button', { name: 'Close the panel' })).toBeNull();
  });

  test('whoever leads it ends the round; a closed one takes nothing and shows what was said', () => {
    const { unmount } = show({}, { mayLead: true });
    expect(screen.getByRole('button', { name: 'End this round, start another' })).toBeVisible();
    expect(screen.getByRole('button', { name: 'Close the panel' })).toBeVisible();
    unmount();
    show({ isClosed: true, items: items.map((one) => ({ ...one, own: 80, mean: 71.6 })) });
    expect(screen.queryByRole('textbox')).toBeNull();
    expect(screen.queryByRole('button')).toBeNull();
    expect(screen.getAllByText('The round before said 72 on average. You said 80.')).toHaveLength(
      10,
    );
  });
});
