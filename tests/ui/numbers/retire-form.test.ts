import { render, screen } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import RetireForm from '#ui/numbers/RetireForm.svelte';

const base = { retired: undefined, mayChange: true, wrong: false, given: '' };
const retired = {
  because: 'The key is wrong.',
  at: '2030-05-01T07:30:00.000Z',
  by: 'Ines Examiner',
};

describe('truth', () => {
  test('it takes a reason, and says that what was sat stays', () => {
    render(RetireForm, base);
    expect(screen.getByText(/What was sat before stays as it was/)).toBeInTheDocument();
    expect(screen.getByRole('textbox', { name: 'Why it is retired' })).toHaveValue('');
    const button = screen.getByRole('button', { name: 'Retire it' });
    expect(button.closest('form')).toHaveAttribute('action', '?/retire');
  });

  test('a reason that was refused is told at its field, and stays there', () => {
    render(RetireForm, { ...base, wrong: true, given: 'x'.repeat(40) });
    const field = screen.getByRole('textbox', { name: /Why it is retired/ });
    expect(field).toHaveValue('x'.repeat(40));
    expect(field).toHaveAccessibleDescription(/Write a reason of at most 500 signs/);
  });

  test('once retired it says by whom and why, and an examiner can take it back', () => {
    render(RetireForm, { ...base, retired });
    expect(screen.getByText(/^Retired by Ines Examiner,/)).toBeInTheDocument();
    expect(screen.getByText('The key is wrong.')).toBeInTheDocument();
    expect(screen.queryByRole('textbox')).toBeNull();
    const back = screen.getByRole('button', { name: 'Take it back into the bank' });
    expect(back.closest('form')).toHaveAttribute('action', '?/back');
  });

  test('whoever may not change the bank is shown no button, and who may', () => {
    const { unmount } = render(RetireForm, { ...base, mayChange: false });
    expect(screen.getByText('An examiner can retire it.')).toBeInTheDocument();
    expect(screen.queryByRole('button')).toBeNull();
    unmount();
    render(RetireForm, { ...base, retired, mayChange: false });
    expect(screen.queryByRole('button')).toBeNull();
  });
});
