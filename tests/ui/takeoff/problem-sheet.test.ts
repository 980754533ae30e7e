import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { isKeptProblem, type KeptProblem } from '#engine/takeoff/kept-problem.ts';
import { browserStore } from '#ui/attempts/browser-store.ts';
import { language } from '#ui/language/language.svelte.ts';
import type { ProblemAddress } from '#ui/takeoff/problem-address.ts';
import ProblemSheet from '#ui/takeoff/ProblemSheet.svelte';
import { rightAnswer, tinyProblem, tinyTakeoffBundle } from './tiny-takeoff.ts';

const instance = tinyProblem();
const [sheets, time] = [rightAnswer(instance, 0), rightAnswer(instance, 1)];
const count = Number(sheets.split(' ')[0]);
const address: ProblemAddress = { family: 'tiny', seed: '5', form: 'entry', among: 'this' };

// jsdom has nothing to scroll.
Object.assign(Element.prototype, { scrollIntoView: () => {} });

beforeEach(() => localStorage.clear());
afterEach(() => language.choose('en'));

const show = (other: Partial<ProblemAddress> = {}) =>
  render(ProblemSheet, {
    bundle: tinyTakeoffBundle,
    instance,
    address: { ...address, ...other },
    known: ['tiny'],
  });

const field = () => screen.getByRole('textbox', { name: 'Your answer' });
const press = (name: string | RegExp) => userEvent.click(screen.getByRole('button', { name }));
const verdict = (name: string) => screen.getByRole('group', { name });

async function answer(text: string) {
  await userEvent.clear(field());
  await userEvent.type(field(), text);
  await press(/^Check/);
}

const kept = (): readonly KeptProblem[] =>
  browserStore
    .names('takeoff/')
    .map((name) => browserStore.read(name))
    .filter(isKeptProblem);

describe('truth', () => {
  test('the problem shows its drawing, its words and its numbers', () => {
    show();
    expect(screen.getByRole('heading', { level: 1, name: 'A tiny problem' })).toBeInTheDocument();
    expect(screen.getByRole('img', { name: 'A straight wall, from above' })).toBeInTheDocument();
    expect(screen.getByRole('heading', { level: 2, name: 'How many sheets?' })).toBeInTheDocument();
    expect(screen.getAllByText('Sheet', { selector: 'dt' }).length).toBeGreaterThan(0);
  });

  test('an answer is echoed while it is written', async () => {
    show();
    await userEvent.type(field(), '4.');
    expect(field()).toHaveAccessibleDescription('Cannot be read yet.');
    await userEvent.type(field(), '5 sheets');
    expect(field()).toHaveAccessibleDescription('Read as 4.5 sheets');
  });

  test('nothing written and what cannot be read are told at the field', async () => {
    show();
    await press('Check');
    expect(field()).toHaveAccessibleDescription('Write an answer first.');
    expect(field()).toHaveFocus();
    await answer('many');
    expect(field()).toBeInvalid();
    expect(kept()).toEqual([]);
  });

  test('a slip is named with what to do, and never the answer', async () => {
    show();
    await answer(String(count - 1));
    const note = verdict('A known slip');
    expect(note).toHaveTextContent('Round up.');
    expect(note).not.toHaveTextContent(sheets);
    expect(note).toHaveFocus();
    await answer(String(count));
    expect(verdict('Right')).toHaveTextContent(`Your answer: ${sheets}`);
    expect(screen.queryByRole('textbox')).not.toBeInTheDocument();
  });

  test('the unit picked beside the field is the unit of a bare number', async () => {
    show();
    await answer(String(count));
    await press('Next part');
    const minutes = Number(time.split(' ')[0]);
    await userEvent.click(screen.getByRole('radio', { name: 'h' }));
    await answer(String(minutes));
    expect(verdict('The unit is off')).toBeInTheDocument();
    await userEvent.click(screen.getByRole('radio', { name: 'min' }));
    await press('Check again');
    expect(screen.getAllByRole('group', { name: 'Right' })).toHaveLength(2);
  });

  test('a wrong first part, used rightly, earns the second', async () => {
    show();
    await answer(String(count + 1));
    await press('Go on with my answer');
    const { exact } = instance.parts[1]!;
    const seconds = typeof exact === 'boolean' ? 0 : Number(exact.value.valueOf());
    await answer(String(Math.round((seconds / 60 / count) * (count + 1))));
    expect(verdict('Right')).toHaveTextContent('from your');
    const [problem] = kept();
    expect(problem?.answers.map(({ credit, followed }) => [credit, followed])).toEqual([
      [0, false],
      [1, true],
    ]);
  });

  test('a decision is chosen, and the sum told at the end', async () => {
    show();
    await answer(String(count));
    await press('Next part');
    await press('Show the working');
    await press('Next part');
    await press('Check');
    expect(screen.getByRole('alert')).toHaveTextContent('Choose an answer first.');
    await userEvent.click(screen.getByRole('radio', { name: rightAnswer(instance, 2) }));
    await press('Check');
    expect(screen.getByText('2 of 3 right at the first try')).toBeInTheDocument();
    expect(screen.getByRole('button', { name: 'Next problem' })).toBeInTheDocument();
  });

  test('the working closes a part, step by step', async () => {
    show();
    await press('Show the working');
    const heading = screen.getByRole('heading', { level: 3, name: 'Working' });
    const lines = within(heading.parentElement!).getAllByRole('listitem');
    expect(lines.at(-1)).toHaveTextContent(`Sheets: ${sheets}`);
    expect(lines.length).toBeGreaterThan(3);
    expect(screen.queryByRole('textbox')).not.toBeInTheDocument();
    expect(kept()[0]?.answers[0]).toMatchObject({ shown: true, credit: 0, tries: [] });
  });

  test('the choice form offers the slips, and says which was taken', async () => {
    show({ form: 'choice' });
    const options = screen
      .getAllByRole('radio')
      .map((radio) => radio.closest('label')?.textContent);
    expect(options.map((text) => text?.trim())).toContain(sheets);
    await userEvent.click(screen.getByRole('radio', { name: `${count - 1} sheets` }));
    await press('Check');
    expect(verdict('A known slip')).toBeInTheDocument();
  });

  test('the screen changes its language at once, the answer stays', async () => {
    show();
    await userEvent.type(field(), String(count));
    language.choose('es');
    expect(await screen.findByRole('textbox', { name: 'Su respuesta' })).toHaveValue(String(count));
    expect(screen.getByRole('heading', { level: 2, name: '¿Cuántas hojas?' })).toBeInTheDocument();
  });
});

describe('no-regression', () => {
  test('whoever comes back goes on where they left off', async () => {
    const first = show();
    await answer(String(count + 1));
    await answer(String(count));
    await press('Next part');
    await answer('1');
    first.unmount();
    show();
    expect(await screen.findByDisplayValue('1')).toBeInTheDocument();
    expect(screen.getByRole('heading', { level: 2, name: /one by one/ })).toBeInTheDocument();
    await answer(time);
    expect(kept()).toHaveLength(1);
    expect(kept()[0]?.answers.map(({ tries }) => tries.length)).toEqual([2, 2]);
  });
});
