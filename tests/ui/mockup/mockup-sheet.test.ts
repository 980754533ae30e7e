import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { language } from '#ui/language/language.svelte.ts';
import MockupSheet from '#ui/mockup/MockupSheet.svelte';
import { wallFrom } from '#ui/mockup/wall-address.ts';
import { tinyBundle, tinySequence } from '../tiny-content.ts';

// jsdom has no modal dialogs, and nothing to scroll.
Object.assign(HTMLDialogElement.prototype, {
  showModal(this: HTMLDialogElement) {
    this.open = true;
  },
  close(this: HTMLDialogElement) {
    this.open = false;
    this.dispatchEvent(new Event('close'));
  },
});
globalThis.scrollTo = () => {};

beforeEach(() => localStorage.clear());
afterEach(() => language.choose('en'));

function show(asked: string) {
  const wall = wallFrom(tinyBundle.method, new URLSearchParams(asked));
  if (!wall.ok) throw new Error(JSON.stringify(wall.error));
  const sequence = tinySequence(wall.value.site);
  return render(MockupSheet, { bundle: tinyBundle, wall: wall.value, sequence });
}

const user = userEvent.setup();
/** A press shows that it was taken, and then does what it is for. */
async function press(name: string | RegExp) {
  await user.click(screen.getAllByRole('button', { name }).at(0)!);
  await vi.waitFor(() =>
    expect(screen.queryByRole('button', { busy: true })).not.toBeInTheDocument(),
  );
}
const choose = (name: string) => user.click(screen.getByRole('radio', { name }));
const bench = () =>
  screen.getAllByRole('radio').map((card) => card.parentElement?.textContent?.trim());
const onTheWall = () =>
  within(screen.getByRole('region', { name: 'On the wall' }))
    .queryAllByRole('listitem')
    .map((row) => row.textContent?.trim().replace(/\s+/g, ' '));

async function buildRight() {
  await choose('Prime');
  await press('Put it up');
  await press('Wait 5 min');
  await choose('Hang the sheet');
  await user.clear(screen.getByLabelText('How high?'));
  await user.type(screen.getByLabelText('How high?'), '8 1/2');
  await press('Put it up');
}

describe('truth', () => {
  test('a press is shown as taken before the card is up', async () => {
    show('mode=own');
    await choose('Prime');
    const putUp = screen.getByRole('button', { name: 'Put it up' });
    await user.click(putUp);
    expect(putUp).toHaveAttribute('aria-busy', 'true');
    expect(onTheWall()).toEqual([]);
    await vi.waitFor(() => expect(onTheWall()).toEqual(['Prime']));
  });

  test('whatever comes next finds the card up', async () => {
    show('mode=own');
    await choose('Prime');
    await user.click(screen.getByRole('button', { name: 'Put it up' }));
    await user.click(screen.getByRole('button', { name: 'Undo' }));
    expect(bench()).toHaveLength(4);
    expect(screen.getByRole('status')).toHaveTextContent('Prime');
  });

  test('a card that was put up leaves the bench and stands on the wall', async () => {
    show('mode=own');
    expect(bench()).toHaveLength(4);
    await choose('Prime');
    await press('Put it up');
    expect(bench()).toHaveLength(3);
    expect(onTheWall()).toEqual(['Prime']);
    expect(screen.getByRole('status')).toHaveTextContent('Up: Prime. 1 on the wall.');
  });

  test('guided, a right build ends in a review at 100', async () => {
    show('mode=guided');
    await buildRight();
    expect(onTheWall()).toEqual(['Prime', 'Hang the sheet 8 1/2 in']);
    await press('Have it inspected');
    const review = await screen.findByRole('region', { name: 'Inspection' });
    expect(review).toHaveTextContent('100 of 100');
    expect(review).toHaveTextContent('Accept');
    expect(screen.getByRole('heading', { name: 'Punch list: 0 items' })).toBeInTheDocument();
    await vi.waitFor(() =>
      expect(screen.getByRole('heading', { name: 'Inspection' })).toHaveFocus(),
    );
  });

  test('guided, a refusal stands at the card with its reason and its price', async () => {
    show('mode=guided');
    await choose('Heat it');
    await press('Put it up');
    const card = screen.getByRole('region', { name: 'Heat it' });
    expect(card).toHaveTextContent('This does not belong on this wall. −1');
    expect(card).toHaveTextContent('It burns.');
    expect(screen.getByRole('status')).toHaveTextContent('It burns. costs 1');
    expect(onTheWall()).toEqual([]);
  });

  test('a hint says what it costs before it is taken', async () => {
    show('mode=guided');
    await press('Why it is done costs 0.5');
    const hint = screen.getByRole('region', { name: 'Hint for a step that can come next' });
    expect(hint).toHaveTextContent('It bonds.');
    await press('How it is done costs 1');
    expect(hint).toHaveTextContent('All over');
    await press('Which step it is costs 2');
    expect(within(hint).queryByRole('button')).not.toBeInTheDocument();
  });

  test('on your own there is no hint', () => {
    show('mode=own');
    expect(screen.queryByRole('button', { name: /Hint/ })).not.toBeInTheDocument();
  });

  test('a card that hurts says so', async () => {
    show('mode=own');
    await choose('Prime');
    const card = screen.getByRole('region', { name: 'Prime' });
    expect(card).toHaveTextContent('Caution: Vapour');
    expect(card).toHaveTextContent('Vapour. Air the place.');
  });

  test('a setting that nobody made holds the card back and takes the focus', async () => {
    show('mode=own');
    await choose('Hang the sheet');
    await press('Put it up');
    const height = screen.getByLabelText('How high?');
    expect(height).toHaveFocus();
    expect(height).toHaveAccessibleDescription('Set it first, or leave it on purpose.');
    await press('More');
    await press('Put it up');
    expect(onTheWall()).toHaveLength(1);
  });

  test('what was typed is echoed as it was read, or with what is wrong with it', async () => {
    show('mode=own');
    await choose('Hang the sheet');
    const height = screen.getByLabelText('How high?');
    await user.clear(height);
    await user.type(height, '8.5');
    expect(height).toHaveAccessibleDescription('Read as 8 1/2 in');
    await user.type(height, ' gal');
    expect(height).toBeInvalid();
    await user.clear(height);
    await user.type(height, '20 in');
    expect(height).toHaveAccessibleDescription('It goes from 4 in to 14 in.');
  });

  test('the touch test tells in words', async () => {
    show('mode=own');
    await press('Touch it');
    const clock = screen.getByRole('region', { name: 'Clock' });
    expect(clock).toHaveTextContent('Nothing up here dries.');
    await choose('Prime');
    await press('Put it up');
    await press('Wait 1 min');
    await press('Touch it');
    expect(within(clock).getByText('Prime').nextElementSibling).toHaveTextContent('Tacky');
    expect(clock).toHaveTextContent('1 min');
  });

  test('the inspection asks once, and counts what is up without telling what is missing', async () => {
    show('mode=own');
    await choose('Heat it');
    await press('Put it up');
    await press('Have it inspected');
    const dialog = screen.getByRole('dialog');
    expect(dialog).toHaveTextContent('1 card is up.');
    expect(dialog).not.toHaveTextContent('Prime');
    await user.click(within(dialog).getByRole('button', { name: 'Have it inspected' }));
    expect(await screen.findByRole('heading', { name: 'Punch list: 3 items' })).toBeInTheDocument();
    const list = within(screen.getByRole('region', { name: /^Punch list/ }));
    expect(list.getAllByText('Left out')).toHaveLength(2);
    expect(list.getByText('Not on this wall')).toBeInTheDocument();
  });

  test('the bench can be searched without accents', async () => {
    show('mode=own');
    language.choose('es');
    await user.type(
      await screen.findByRole('searchbox', { name: 'Buscar una tarjeta' }),
      'goteron',
    );
    expect(bench()).toEqual(['Ponga el goterón']);
    await user.type(screen.getByRole('searchbox'), 'x');
    expect(screen.getByText('Ninguna tarjeta del banco dice eso.')).toBeInTheDocument();
  });

  test('another language rewrites the wall in place', async () => {
    show('mode=guided');
    await buildRight();
    await press('Have it inspected');
    language.choose('es');
    expect(await screen.findByText('Se acepta')).toBeInTheDocument();
    expect(screen.getByText('de 100')).toBeInTheDocument();
  });
});

describe('laws', () => {
  test('undo takes down the last card, by button and by key, but not while somebody types', async () => {
    show('mode=own');
    for (const card of ['Prime', 'Heat it']) {
      await choose(card);
      await press('Put it up');
    }
    await press('Undo');
    expect(onTheWall()).toEqual(['Prime']);
    await user.type(screen.getByRole('searchbox'), 'u');
    expect(onTheWall()).toEqual(['Prime']);
    screen.getByRole('button', { name: 'Undo' }).focus();
    await user.keyboard('{Control>}z{/Control}');
    expect(onTheWall()).toEqual([]);
    expect(screen.getByRole('button', { name: 'Undo' })).toBeDisabled();
  });

  test('who leaves and comes back goes on, and can start again', async () => {
    const { unmount } = show('mode=guided&seed=5');
    await choose('Prime');
    await press('Put it up');
    await press('Wait 1 min');
    unmount();
    show('mode=guided&seed=5');
    expect(onTheWall()).toEqual(['Prime']);
    expect(screen.getByRole('region', { name: 'Clock' })).toHaveTextContent('1 min');
    await press('Start again');
    expect(onTheWall()).toEqual([]);
    expect(screen.queryByText('You go on where you left off.')).not.toBeInTheDocument();
  });

  test('another bench is another wall', async () => {
    const { unmount } = show('mode=own&seed=5');
    await choose('Prime');
    await press('Put it up');
    unmount();
    show('mode=own&seed=6');
    expect(onTheWall()).toEqual([]);
  });

  test('who comes back after the inspection finds the review, and can build it again', async () => {
    const { unmount } = show('mode=guided');
    await buildRight();
    await press('Have it inspected');
    unmount();
    show('mode=guided');
    const review = await screen.findByRole('region', { name: 'Inspection' });
    expect(review).toHaveTextContent('100 of 100');
    await press('Build it again');
    expect(onTheWall()).toEqual([]);
    expect(bench()).toHaveLength(4);
  });
});
