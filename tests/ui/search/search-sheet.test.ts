import { render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { language } from '#ui/language/language.svelte.ts';
import { searchEntries } from '#ui/search/search-entry.ts';
import { Search } from '#ui/search/search.svelte.ts';
import SearchSheet from '#ui/search/SearchSheet.svelte';
import { tinyContent } from '../tiny-content.ts';

afterEach(() => language.choose('en'));

const entries = searchEntries(tinyContent);

async function show(query = '') {
  const search = new Search(query);
  await search.open(() => Promise.resolve(entries));
  const heard = { onask: vi.fn(), onretry: vi.fn() };
  render(SearchSheet, { search, ...heard });
  return heard;
}

describe('truth', () => {
  test('every method, step and term can be found, each at an address of its own', () => {
    expect(entries.map(({ kind }) => kind)).toEqual([
      'method',
      'step',
      'step',
      'step',
      'term',
      'term',
    ]);
    expect(new Set(entries.map(({ address }) => address)).size).toBe(entries.length);
  });

  test('a step of some walls only is opened on such a wall', () => {
    const addresses = entries.map(({ address }) => address);
    expect(addresses).toContain('/methods/tiny-wall#prime');
    expect(addresses).toContain('/methods/tiny-wall?edge=drip#set-edge');
  });

  test('typing finds, counts and remembers', async () => {
    const { onask } = await show();
    await userEvent.type(screen.getByRole('searchbox'), 'goteron');
    expect(screen.getByRole('status')).toHaveTextContent('1 place found');
    expect(screen.getByRole('link', { name: 'Set the edge' })).toHaveAttribute(
      'href',
      '/methods/tiny-wall?edge=drip#set-edge',
    );
    expect(onask).toHaveBeenLastCalledWith('goteron');
  });

  test('the sentence that was found stands there in the language it was found in', async () => {
    await show('ventile gotea');
    const sentence = screen.getByText('Gotea', { selector: 'mark' }).closest('p');
    expect(sentence).toHaveAttribute('lang', 'es');
    expect(sentence).toHaveTextContent('Gotea.');
  });

  test('arrow keys walk from the entry through what was found and back', async () => {
    await show('shelf sheet');
    const [first, second] = screen.getAllByRole('link');
    screen.getByRole('searchbox').focus();
    await userEvent.keyboard('{ArrowDown}');
    expect(first).toHaveFocus();
    await userEvent.keyboard('{ArrowDown}');
    expect(second).toHaveFocus();
    await userEvent.keyboard('{ArrowUp}{ArrowUp}');
    expect(screen.getByRole('searchbox')).toHaveFocus();
  });

  test('nothing found says so and how to go on', async () => {
    await show('xylophone');
    expect(screen.getByText('Nothing was found')).toBeInTheDocument();
    expect(screen.getByRole('link', { name: 'Glossary' })).toHaveAttribute('href', '/glossary');
  });

  test('an index that cannot be read can be asked for again', async () => {
    const search = new Search('shelf');
    await search.open(() => Promise.reject(new Error('no signal')));
    const onretry = vi.fn(() => search.open(() => Promise.resolve(entries)));
    render(SearchSheet, { search, onask: vi.fn(), onretry });

    expect(screen.getByRole('alert')).toHaveTextContent('The index cannot be read');
    await userEvent.click(screen.getByRole('button', { name: 'Try again' }));
    expect(onretry).toHaveBeenCalledOnce();
    expect(await screen.findByRole('link', { name: 'shelf' })).toBeInTheDocument();
  });
});
