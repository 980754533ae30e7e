import { render, screen } from '@testing-library/svelte';
import { afterEach, expect, test } from 'vitest';
import Attention from '#ui/company/Attention.svelte';
import type { Attention as Item } from '#engine/record/attention.ts';
import { language } from '#ui/language/language.svelte.ts';

const columns = [{ id: 'base', title: { en: 'Base of wall', es: 'Base del muro' } }];
const items: readonly Item[] = [
  { kind: 'suspended', scheme: 'base', people: 2 },
  { kind: 'ending', within: 30, person: 'p', name: 'Ana', scheme: 'base', until: '2030-05-20' },
  { kind: 'more-ending', people: 3 },
  { kind: 'job', id: 'j', title: 'East wall', empty: 1 },
  { kind: 'appeal', application: 'a', name: 'Ben' },
  { kind: 'handed-in', sitting: 's', name: 'Cleo', scheme: 'base' },
  { kind: 'applications', open: 4 },
  { kind: 'late', id: 'w', title: 'Corners', to: ['North', 'South', 'East', 'West'], people: 5 },
];

afterEach(() => language.choose('en'));

test('each thing that waits leads to where it is dealt with, in the order given', () => {
  render(Attention, { home: '/company/x', columns, items });
  expect(screen.getAllByRole('link').map((link) => link.getAttribute('href'))).toEqual([
    '/company/x/board?qualification=base&state=suspended',
    '/company/x/board/p',
    '/company/x/board/coverage#who',
    '/company/x/jobs/j',
    '/company/x/decisions/a',
    '/company/x/sittings/s',
    '/company/x/applications',
    '/company/x/assignments/w',
  ]);
  expect(screen.getByRole('link', { name: 'Ben appealed against a decision' })).toBeVisible();
  const late = 'Corners is late for 5 (North, South, East, …)';
  expect(screen.getByRole('link', { name: late })).toBeVisible();
});

test('it speaks Spanish', () => {
  language.choose('es');
  render(Attention, { home: '/company/x', columns, items });
  expect(screen.getByRole('link', { name: /^Cleo entregó: Base del muro/ })).toBeVisible();
});

test('where nothing waits, that is said', () => {
  render(Attention, { home: '/company/x', columns, items: [] });
  expect(screen.queryByRole('list')).toBeNull();
  expect(screen.getByText(/\w/)).toBeVisible();
});
