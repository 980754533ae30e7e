import { render, screen } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import CrewLinks from '#ui/company/CrewLinks.svelte';
import { monthsBefore } from '#ui/company/months-before.ts';
import ReportMonths from '#ui/company/ReportMonths.svelte';
import ForWhom from '#ui/assignments/ForWhom.svelte';
import { m } from '#ui/messages/generated/messages.js';

test('the months before a day are twelve, the last one first, over the end of a year', () => {
  const months = monthsBefore('2030-02-01T00:00:00.000Z');
  expect(months.slice(0, 3)).toEqual(['2030-01', '2029-12', '2029-11']);
  expect(months).toHaveLength(12);
  expect(months.at(-1)).toBe('2029-02');
});

test('on the first of a month the report of the last one is offered first', () => {
  const { container } = render(ReportMonths, {
    home: '/company/c',
    at: '2030-06-01T00:00:00.000Z',
  });
  const choice = screen.getByLabelText<HTMLSelectElement>(m.attend_report_month());
  expect([choice.name, choice.value]).toEqual(['month', '2030-05']);
  expect(choice).toHaveDisplayValue('May 2030');
  expect(container.querySelector('form')).toHaveAttribute('action', '/company/c/report.pdf');
});

describe('crews', () => {
  const crews = [
    { id: 'a', name: 'North', people: 3 },
    { id: 'b', name: 'South', people: 1 },
  ];

  test('that are all listed lead to where each goes wrong, and nowhere else', () => {
    render(CrewLinks, { home: '/company/c', crews, isMore: false });
    expect(screen.getAllByRole('link').map((link) => link.getAttribute('href'))).toEqual([
      '/company/c/crews/a',
      '/company/c/crews/b',
    ]);
  });

  test('of which more are left out say so, and lead to the list', () => {
    render(CrewLinks, { home: '/company/c', crews, isMore: true });
    expect(screen.getByText(m.crews_listed({ count: 2 }))).toBeVisible();
    const list = screen.getByRole('link', { name: m.crews_title() });
    expect(list).toHaveAttribute('href', '/company/c/crews');
  });

  test.each([
    [false, m.assign_find_person],
    [true, m.assign_find_either],
  ])('to give work to are looked for by name where more are left out: %s', (isMore, label) => {
    render(ForWhom, {
      crews: { crews, isMore },
      chosen: ['b'],
      persons: [],
      search: '',
      found: undefined,
      wrong: undefined,
    });
    expect(screen.getByRole('checkbox', { name: 'South' })).toBeChecked();
    expect(screen.getByLabelText(label())).toBeVisible();
    expect(screen.queryByText(m.assign_crews_more()) !== null).toBe(isMore);
  });
});
