import { render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import Switches from '#ui/frame/Switches.svelte';
import { paper } from '#ui/frame/paper.ts';

beforeEach(() => {
  delete document.documentElement.dataset['paper'];
  localStorage.clear();
  vi.stubGlobal('matchMedia', (query: string) => ({ matches: false, media: query }));
});

describe('truth', () => {
  test('the paper turns dark and light again by one press each, and is remembered', async () => {
    render(Switches);
    const turn = screen.getByRole('button', { name: /Dark/ });

    await userEvent.click(turn);
    expect(document.documentElement).toHaveAttribute('data-paper', 'dark');
    expect(localStorage.getItem('paper')).toBe('dark');

    await userEvent.click(turn);
    expect(document.documentElement).toHaveAttribute('data-paper', 'light');
    expect(localStorage.getItem('paper')).toBe('light');
  });

  test('where the device prefers dark, the first press turns to light', async () => {
    vi.stubGlobal('matchMedia', () => ({ matches: true }));
    expect(paper.current).toBe('dark');
    render(Switches);
    await userEvent.click(screen.getByRole('button', { name: /Light/ }));
    expect(paper.current).toBe('light');
  });
});
