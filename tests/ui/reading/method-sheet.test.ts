import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { language } from '#ui/language/language.svelte.ts';
import MethodSheet from '#ui/reading/MethodSheet.svelte';
import { siteAddress } from '#ui/reading/site-address.ts';
import { tinyBundle, tinySequence } from '../tiny-content.ts';

afterEach(() => language.choose('en'));

const show = (answers: Readonly<Record<string, string>> = {}, onsite = vi.fn()) => {
  render(MethodSheet, { bundle: tinyBundle, sequence: tinySequence(answers), onsite });
  return onsite;
};

const row = (heading: string) => {
  const item = screen.getByRole('heading', { name: heading, level: 3 }).closest('li');
  if (!item) throw new Error(`${heading} is in no row`);
  return item;
};

describe('truth', () => {
  test('a step shows its key points, its reason, its wait and its caution', () => {
    show();
    const prime = row('Prime');
    expect(prime).toHaveTextContent('All over');
    expect(prime).toHaveTextContent('It bonds.');
    expect(prime).toHaveTextContent('Work: 6 min');
    expect(prime).toHaveTextContent('Wait 2 min before step 2.');
    expect(prime).toHaveTextContent('How to tell: Touch it.');
    expect(prime).toHaveTextContent('Vapour. Air the place.');
  });

  test('a setting shows what the data sheet asks and the note of its source', () => {
    show();
    const hang = row('Hang the sheet');
    expect(hang).toHaveTextContent('8 in or more');
    expect(within(hang).getByRole('link', { name: 'Source, note 1' })).toHaveAttribute(
      'href',
      '#note-1',
    );
    expect(screen.getByRole('link', { name: 'A standard' })).toHaveAttribute(
      'href',
      'https://example.org/standard',
    );
  });

  test('a constraint leads to the step that it comes from', () => {
    show({ edge: 'drip' });
    const hang = within(row('Hang the sheet'));
    expect(hang.getByRole('link', { name: 'After step 2' })).toHaveAttribute('href', '#set-edge');
    expect(row('Set the edge')).toHaveAttribute('id', 'set-edge');
  });

  test('a wall without the step does not show it', () => {
    show();
    expect(screen.queryByRole('heading', { name: 'Set the edge' })).not.toBeInTheDocument();
    expect(screen.getByRole('heading', { name: '2 steps' })).toBeInTheDocument();
  });

  test('choosing another condition asks for that wall', async () => {
    const onsite = show();
    await userEvent.selectOptions(screen.getByRole('combobox', { name: 'Edge' }), 'Drip edge');
    expect(onsite).toHaveBeenCalledWith({ edge: 'drip', weather: 'normal' });
  });

  test('what does not belong and what keeps water out stand below the steps', () => {
    show();
    expect(row('Heat it')).toHaveTextContent('It burns.');
    expect(within(row('Top')).getByRole('link', { name: '2' })).toHaveAttribute('href', '#hang');
    expect(row('Wall')).toHaveTextContent('Open by nature');
  });

  test('the whole sheet changes language at once', async () => {
    show();
    language.choose('es');
    expect(await screen.findByRole('heading', { name: 'Un muro chico' })).toBeInTheDocument();
    expect(row('Cuelgue la membrana')).toHaveTextContent('8 pulg o más');
    expect(row('Imprima')).toHaveTextContent('Espere 2 min');
  });

  test('the address of a wall names every condition', () => {
    expect(siteAddress('/methods/tiny-wall', { edge: 'drip', weather: 'normal' })).toBe(
      '/methods/tiny-wall?edge=drip&weather=normal',
    );
    expect(siteAddress('/methods/tiny-wall', {})).toBe('/methods/tiny-wall');
  });
});
