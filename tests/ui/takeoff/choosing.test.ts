import { fireEvent, render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { beforeEach, describe, expect, test } from 'vitest';
import { catalogueOf } from '#engine/compile/catalogue.ts';
import type { KeptProblem } from '#engine/takeoff/kept-problem.ts';
import { browserStore } from '#ui/attempts/browser-store.ts';
import ChooseProblems from '#ui/takeoff/ChooseProblems.svelte';
import History from '#ui/takeoff/History.svelte';
import WorksheetForm from '#ui/takeoff/WorksheetForm.svelte';
import { tinyContent } from '../tiny-content.ts';

const families = catalogueOf(tinyContent).takeoffs;

const problem: KeptProblem = {
  id: 'one',
  at: '2030-05-01T07:30:00.000Z',
  family: 'tiny',
  seed: '42',
  form: 'entry',
  revision: 'r',
  sheetRevision: 's',
  answers: [
    {
      part: 'sheets',
      tries: [{ text: '3' }, { text: '4' }],
      verdict: 'slip',
      slips: ['down'],
      followed: false,
      credit: 0,
      shown: false,
      closed: true,
    },
    {
      part: 'time',
      tries: [],
      verdict: 'wrong',
      slips: [],
      followed: false,
      credit: 0,
      shown: true,
      closed: true,
    },
  ],
};

beforeEach(() => localStorage.clear());

describe('choosing what to practise', () => {
  test('each kind says what it computes and how it went lately', async () => {
    browserStore.write('takeoff/one', problem);
    render(ChooseProblems, { families });
    const kind = screen.getByRole('checkbox', { name: /A tiny problem/ });
    expect(kind.closest('label')).toHaveTextContent('Sheets · Time · Go on');
    expect(await screen.findByText('0 of the last 2 right')).toBeInTheDocument();
  });

  test('nothing chosen is left to what was missed; what is chosen is counted', async () => {
    render(ChooseProblems, { families });
    expect(screen.getByText('Not tried yet')).toBeInTheDocument();
    expect(screen.getByRole('button', { name: 'Pick by what I miss' })).toBeInTheDocument();
    await userEvent.click(screen.getByRole('checkbox', { name: /A tiny problem/ }));
    expect(screen.getByRole('button', { name: 'Start with the 1 chosen' })).toBeInTheDocument();
    await userEvent.click(screen.getByRole('button', { name: 'Choose none' }));
    expect(screen.getByRole('button', { name: 'Pick by what I miss' })).toBeInTheDocument();
  });
});

describe('the answers so far', () => {
  test('each leads back to its problem, and all can be taken away and brought back', async () => {
    browserStore.write('takeoff/one', problem);
    browserStore.write('takeoff/broken', { id: 'half' });
    render(History, { families });
    const link = await screen.findByRole('link', { name: 'A tiny problem' });
    expect(link).toHaveAttribute('href', '/takeoff/tiny?seed=42');
    const row = link.closest('li')!;
    expect(row).toHaveTextContent('3 A known slip · 2 tries');
    expect(row).toHaveTextContent('— working shown');
    await userEvent.click(screen.getByRole('button', { name: /Remove all|Take all away/ }));
    expect(screen.getByText('Nothing answered yet')).toBeInTheDocument();
    expect(browserStore.read('takeoff/one')).toBeUndefined();
    await userEvent.click(screen.getByRole('button', { name: /back/ }));
    expect(browserStore.read('takeoff/one')).toEqual(problem);
    expect(browserStore.read('takeoff/broken')).toEqual({ id: 'half' });
  });
});

describe('ordering a worksheet', () => {
  const order = () => fireEvent.submit(document.querySelector('form')!);

  test('what is wrong is told at its field, and nothing is sent', async () => {
    render(WorksheetForm, { families });
    const count = screen.getByRole('textbox', { name: 'How many problems' });
    await userEvent.clear(count);
    await userEvent.type(count, '41');
    expect(await order()).toBe(false);
    expect(count).toHaveAccessibleDescription('From 1 to 40 Write a whole number from 1 to 40.');
    expect(count).toHaveFocus();
    expect(screen.getByText('Choose one kind of problem or more.')).toBeInTheDocument();
  });

  test('a right order goes to the server as it stands', async () => {
    render(WorksheetForm, { families });
    await userEvent.click(screen.getByRole('button', { name: 'Choose all' }));
    const form = document.querySelector('form')!;
    expect(form).toHaveAttribute('action', '/takeoff/worksheet.pdf');
    expect(await order()).toBe(true);
    expect([...new FormData(form)].map(([name]) => name)).toEqual([
      'count',
      'seed',
      'lang',
      'families',
    ]);
  });
});
