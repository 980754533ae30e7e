import { render, screen, within } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import BoardTable from '#ui/board/BoardTable.svelte';
import DeclaredList from '#ui/declared/DeclaredList.svelte';

const columns = [
  { id: 'base', title: { en: 'Base of wall', es: 'Base del muro' } },
  { id: 'lead', title: { en: 'Crew lead', es: 'Encargado' } },
];
const one = {
  id: 'one',
  title: 'Working at height',
  issuer: 'Harrow County Trades',
  number: 'HT-204',
  scheme: 'base',
  issuedOn: '2029-03-01',
  validUntil: '2030-03-01',
  madeAt: '2029-03-02T08:00:00.000Z',
};
const shared = { declared: [one], columns, today: '2030-03-01', mayChange: true, id: 'fresh' };

describe('what was issued elsewhere', () => {
  test('stands on the board under its word, beside a state that it does not change', () => {
    const cell = {
      state: 'none' as const,
      certificate: undefined,
      fade: { last: undefined, share: undefined, advice: 'never' as const },
    };
    const row = (id: string) => ({
      id,
      name: id,
      number: null,
      crew: null,
      crewName: null,
      cells: [cell, cell],
    });
    render(BoardTable, {
      home: '/board',
      columns,
      rows: [row('Ana'), row('Bo')],
      byCrew: false,
      declared: { Ana: ['base'] },
    });
    const [, ana, bo] = screen.getAllByRole('row');
    const [base, lead] = within(ana!).getAllByRole('cell');
    expect(base).toHaveTextContent(/None.*declared/i);
    expect(lead).not.toHaveTextContent('declared');
    expect(bo).not.toHaveTextContent('declared');
  });

  test('says that nobody verified it, and when it ended', async () => {
    const { rerender } = render(DeclaredList, shared);
    expect(screen.getByText(/Declared, not verified/, { selector: 'section > p' })).toBeVisible();
    expect(screen.getByText(/issued by Harrow County Trades, number HT-204/)).toBeVisible();
    expect(screen.queryByText('ended')).toBeNull();
    await rerender({ ...shared, today: '2030-03-02' });
    expect(screen.getByText('ended')).toBeVisible();
  });

  test('is changed by the office alone', () => {
    render(DeclaredList, { ...shared, mayChange: false });
    expect(screen.queryByText('Remove')).toBeNull();
    expect(screen.queryByText(/Write one down/)).toBeNull();
  });

  test('what is wrong stands at its field, with what was entered', () => {
    const given = { title: 'Height', issuer: '', issuedOn: '2031-01-01' };
    render(DeclaredList, { ...shared, declared: [], fault: 'issuedOn', given });
    expect(screen.getByLabelText('What it is for')).toHaveValue('Height');
    expect(screen.getByLabelText('Issued on')).toBeInvalid();
    expect(screen.getByRole('alert')).toHaveTextContent('Give a day up to today.');
  });

  test('a removal without a reason opens where it was asked', () => {
    render(DeclaredList, { ...shared, fault: 'reason', remove: 'one' });
    expect(screen.getByRole('alert')).toHaveTextContent('Say why');
    expect(screen.getByRole('button', { name: 'Remove: Working at height' })).toBeVisible();
  });
});
