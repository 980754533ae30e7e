import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { browserStore } from '#ui/attempts/browser-store.ts';
import { lastFamilies } from '#ui/takeoff/job-entries.svelte.ts';
import JobSheet from '#ui/takeoff/JobSheet.svelte';
import { tinyTakeoff, tinyTakeoffBundle } from './tiny-takeoff.ts';

beforeEach(() => localStorage.clear());

const show = () => render(JobSheet, { bundles: [tinyTakeoffBundle], takeoffs: [tinyTakeoff] });

const field = (name: string) => screen.getByRole('textbox', { name });
const enter = async (name: string, text: string) => {
  await userEvent.clear(field(name));
  await userEvent.type(field(name), text);
};

async function enterJob() {
  await enter('Name of the job', 'Lot 4');
  await enter('Run', '41 ft');
  await enter('Sheet', '10 ft');
  await enter('Surface', '70');
  await userEvent.click(screen.getByRole('radio', { name: 'dry' }));
}

const list = () => screen.getByRole('region', { name: 'A tiny problem' });

describe('truth', () => {
  test('the list comes with its amounts, what they were before rounding, and the working', async () => {
    show();
    await enterJob();
    expect(list()).toHaveTextContent('Sheets 4 sheets');
    expect(list()).toHaveTextContent('3.967 before rounding');
    expect(list()).toHaveTextContent('Time 8 min');
    const working = within(list()).getAllByText(/^Working/);
    await userEvent.click(working[0]!);
    expect(list()).toHaveTextContent('rounded up: 4 sheets');
  });

  test('a number is read as it is entered, in the unit beside the field', async () => {
    show();
    await enter('Surface', '70');
    expect(field('Surface')).toHaveAccessibleDescription('Read as 70 °F');
    await enter('Surface', '21 C');
    expect(field('Surface')).toHaveAccessibleDescription('Read as 69.8 °F');
  });

  test('what is missing is told once the list is asked for, at its field', async () => {
    show();
    expect(field('Run')).toBeValid();
    await enter('Sheet', '10 gal');
    expect(field('Sheet')).toHaveAccessibleDescription(/unit does not fit/);
    await userEvent.click(screen.getByRole('button', { name: 'Work it out' }));
    expect(field('Run')).toHaveAccessibleDescription('Enter this.');
    expect(field('Run')).toHaveFocus();
  });

  test('what does not go together stands at the field that mends it', async () => {
    show();
    await enterJob();
    await enter('Sheet', '6 in');
    expect(field('Sheet')).toHaveAccessibleDescription('The sheet is shorter than 8".');
    expect(screen.queryByRole('region', { name: 'A tiny problem' })).not.toBeInTheDocument();
  });

  test('the last job comes back, and goes when another is begun', async () => {
    const first = show();
    await enterJob();
    first.unmount();
    show();
    expect(await screen.findByDisplayValue('41 ft')).toBeInTheDocument();
    expect(field('Name of the job')).toHaveValue('Lot 4');
    expect(lastFamilies(browserStore)).toEqual(['tiny']);
    await userEvent.click(screen.getByRole('button', { name: 'Start another job' }));
    expect(field('Run')).toHaveValue('');
    expect(field('Name of the job')).toHaveValue('');
  });

  test('what a browser kept of another making does no harm', () => {
    browserStore.write('job', { families: 7, name: {}, entries: { a: 1 } });
    show();
    expect(field('Run')).toHaveValue('');
    expect(lastFamilies(browserStore)).toEqual(['tiny']);
  });

  test('the table to take away is named after the job', async () => {
    const files: Blob[] = [];
    const names: string[] = [];
    vi.stubGlobal(
      'URL',
      Object.assign(URL, {
        createObjectURL: (file: Blob) => files.push(file),
        revokeObjectURL: () => {},
      }),
    );
    vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function (
      this: HTMLAnchorElement,
    ) {
      names.push(this.download);
    });
    show();
    await enterJob();
    await enter('Name of the job', '=Lot 4/é');
    await userEvent.click(screen.getByRole('button', { name: /CSV/ }));
    expect(names).toEqual(['Lot-4e.csv']);
    const text = await files[0]!.text();
    expect(text).toContain("Job,,'=Lot 4/é,,,");
    expect(text).toContain('Needed,A tiny problem,Sheets,4 sheets,');
    vi.restoreAllMocks();
  });
});
