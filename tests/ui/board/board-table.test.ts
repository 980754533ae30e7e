import { render, screen, within } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import type { IsoDate } from '#engine/calendar.ts';
import type { Competence } from '#engine/competence/competence.ts';
import {
  type QualificationState,
  qualificationStates,
} from '#engine/competence/qualification-state.ts';
import BoardTable from '#ui/board/BoardTable.svelte';
import { stateWords } from '#ui/board/state-words.ts';

const day = (text: string) => text as IsoDate;
const cell = (state: QualificationState, share = 1): Competence => ({
  state,
  certificate: undefined,
  fade: {
    last: day('2030-01-01'),
    share,
    advice: share >= 0.75 ? 'fresh' : share >= 0.5 ? 'fading' : 'faded',
  },
});
const columns = [
  { id: 'base', title: { en: 'Base of wall', es: 'Base del muro' } },
  { id: 'lead', title: { en: 'Crew lead', es: 'Encargado' } },
];
const row = (name: string, crewName: string | null, cells: readonly Competence[]) => ({
  id: name,
  name,
  number: null,
  crew: crewName,
  crewName,
  cells,
});

describe('the board', () => {
  const rows = [
    row('Ana', 'North', [cell('current', 0.4), cell('none')]),
    row('Ben', 'North', [cell('in-training', 0.4), cell('suspended')]),
    row('Cyd', null, [cell('due'), cell('withdrawn')]),
  ];

  test('is a table with a heading for each qualification and each crew', () => {
    render(BoardTable, { home: '/board', columns, rows, byCrew: true });
    const table = screen.getByRole('table');
    const heads = within(table).getAllByRole('columnheader');
    expect(heads.map(({ textContent }) => textContent)).toEqual([
      'Person',
      'Base of wall',
      'Crew lead',
    ]);
    expect(within(table).getByRole('rowheader', { name: 'North' })).toBeVisible();
    expect(within(table).getByRole('rowheader', { name: 'No crew' })).toBeVisible();
    expect(within(table).getAllByRole('row')).toHaveLength(6);
  });

  test('every person leads to their evidence', () => {
    render(BoardTable, { home: '/board', columns, rows, byCrew: false });
    expect(screen.getByRole('link', { name: 'Ben' })).toHaveAttribute('href', '/board/Ben');
    expect(screen.queryByRole('rowheader', { name: 'North' })).toBeNull();
  });

  test.each(qualificationStates)('%s is told by a word, and by a shape of its own', (state) => {
    const shapes = qualificationStates.map((one) => {
      const { container, unmount } = render(BoardTable, {
        home: '/board',
        columns: columns.slice(0, 1),
        rows: [row('Ana', null, [cell(one)])],
        byCrew: false,
      });
      const shape = container.querySelector('td svg')!.innerHTML;
      const text = container.querySelector('td')!.textContent;
      unmount();
      return { one, shape, text };
    });
    const own = shapes.find(({ one }) => one === state)!;
    expect(own.text).toContain(stateWords[state]());
    expect(shapes.filter(({ shape }) => shape === own.shape)).toHaveLength(1);
  });

  test('practice is advised to who holds it and let it fade, and to nobody else', () => {
    render(BoardTable, { home: '/board', columns, rows, byCrew: true });
    expect(screen.getAllByText('practise first')).toHaveLength(1);
    const ana = screen.getByRole('link', { name: 'Ana' }).closest('tr')!;
    expect(within(ana).getByText('practise first')).toBeVisible();
    expect(within(ana).getByText('Current')).toBeVisible();
  });
});
