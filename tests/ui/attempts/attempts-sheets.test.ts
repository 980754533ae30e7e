import { render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { beforeEach, describe, expect, test } from 'vitest';
import { catalogueOf } from '#engine/compile/catalogue.ts';
import type { KeptAttempt } from '#engine/marking/kept-attempt.ts';
import AttemptSheet from '#ui/attempts/AttemptSheet.svelte';
import AttemptsSheet from '#ui/attempts/AttemptsSheet.svelte';
import { Attempts } from '#ui/attempts/attempts.svelte.ts';
import { browserStore } from '#ui/attempts/browser-store.ts';
import { tinyBundle, tinyContent } from '../tiny-content.ts';

const { methods } = catalogueOf(tinyContent);
const user = userEvent.setup();

const kept = (id: string, more: Partial<KeptAttempt> = {}): KeptAttempt => ({
  id,
  finished: `2030-05-0${id}T07:30:00.000Z`,
  mode: 'own',
  seed: '1',
  help: [],
  revision: tinyBundle.revision,
  score: 100,
  outcome: 'accept',
  attempt: {
    method: 'tiny-wall',
    site: { edge: 'plain' },
    steps: [
      { step: 'prime', minute: 0 },
      { step: 'hang', settings: { 'turn-up': '8 in' }, minute: 5 },
    ],
  },
  ...more,
});

beforeEach(() => localStorage.clear());

const keep = (...attempts: readonly KeptAttempt[]) => {
  const here = new Attempts(browserStore);
  for (const attempt of attempts) here.keep(attempt);
};

const rows = () =>
  screen
    .getAllByRole('button', { name: /^Remove: / })
    .map((button) => button.closest('li')!.textContent.replace(/\s+/g, ' ').trim());

describe('truth', () => {
  test('an empty history says what to do', () => {
    render(AttemptsSheet, { methods, open });
    expect(screen.getByText('No attempts yet')).toBeInTheDocument();
    expect(screen.getByRole('link', { name: 'Start practising' })).toHaveAttribute(
      'href',
      '/practise',
    );
  });

  test('an attempt is listed with its score, its outcome, its wall and how it was built', () => {
    keep(kept('1'), kept('2', { mode: 'guided', score: 61.5, outcome: 'tear-out' }));
    render(AttemptsSheet, { methods, open });
    const [latest, first] = rows();
    expect(latest).toContain('61.5');
    expect(latest).toContain('A tiny wall Tear out Plain · Normal Guided');
    expect(first).toContain('On your own');
    expect(screen.getAllByRole('link', { name: /A tiny wall/ })[1]).toHaveAttribute(
      'href',
      '/attempts/1',
    );
  });

  test('one attempt, or all, can be removed and brought back', async () => {
    keep(kept('1'), kept('2'), kept('3'));
    render(AttemptsSheet, { methods, open });
    await user.click(screen.getAllByRole('button', { name: 'Remove: A tiny wall' })[0]!);
    expect(rows()).toHaveLength(2);
    await user.click(screen.getByRole('button', { name: 'Remove all' }));
    expect(screen.getByText('No attempts yet')).toBeInTheDocument();
    expect(screen.getByRole('status')).toHaveTextContent('2 attempts removed.');
    await user.click(screen.getByRole('button', { name: 'Bring back' }));
    expect(rows()).toHaveLength(2);
  });

  test('a file with a fault says where, and nothing is lost', async () => {
    keep(kept('1'));
    render(AttemptsSheet, { methods, open });
    const file = JSON.stringify({ attempts: [{ ...kept('2'), mode: 'race' }] });
    await user.upload(screen.getByLabelText('Add from a file'), new File([file], 'a.json'));
    const alert = await screen.findByRole('alert');
    expect(alert).toHaveTextContent('Nothing was added: the file has faults');
    expect(alert).toHaveTextContent('attempts[0].mode');
    expect(rows()).toHaveLength(1);
  });

  test('a right file is added', async () => {
    render(AttemptsSheet, { methods, open });
    const file = JSON.stringify({ attempts: [kept('1'), kept('2')] });
    await user.upload(screen.getByLabelText('Add from a file'), new File([file], 'a.json'));
    expect(await screen.findByText('2 attempts added.')).toBeInTheDocument();
    expect(rows()).toHaveLength(2);
  });

  const open = () => Promise.resolve(tinyBundle);

  test('an attempt is marked again from what is kept', async () => {
    keep(kept('1'));
    render(AttemptSheet, { id: '1', open });
    const review = await screen.findByRole('region', { name: 'Inspection' });
    expect(review).toHaveTextContent('100 of 100');
    expect(screen.queryByText(/content has changed/)).not.toBeInTheDocument();
  });

  test('where the content has changed since, both scores are told', async () => {
    keep(kept('1', { revision: 'older', score: 70 }));
    render(AttemptSheet, { id: '1', open });
    expect(
      await screen.findByText(
        'The content has changed since. Then 70, with the content of today 100.',
      ),
    ).toBeInTheDocument();
  });

  test('an attempt that no longer fits says why, is kept, and can be taken along', async () => {
    const attempt = { ...kept('1').attempt, steps: [{ step: 'paint' }] };
    keep(kept('1', { attempt }));
    render(AttemptSheet, { id: '1', open });
    const alert = await screen.findByRole('alert');
    expect(alert).toHaveTextContent('This attempt no longer fits the content.');
    expect(alert).toHaveTextContent('steps[0].step');
    expect(screen.getByRole('button', { name: 'Save it as a file' })).toBeInTheDocument();
    expect(localStorage.getItem('attempt/1')).toContain('paint');
  });

  test('a method that is gone, and content that does not answer, are told apart', async () => {
    keep(kept('1'));
    const { unmount } = render(AttemptSheet, { id: '1', open: () => Promise.resolve(undefined) });
    expect(await screen.findByRole('alert')).toHaveTextContent('There is no such method.');
    unmount();
    render(AttemptSheet, { id: '1', open: () => Promise.reject(new Error('no signal')) });
    expect(await screen.findByText('The content cannot be read')).toBeInTheDocument();
  });

  test('an attempt that is not here leads back to the list', async () => {
    render(AttemptSheet, { id: 'nowhere', open });
    expect(await screen.findByText('This browser does not keep that attempt')).toBeInTheDocument();
    expect(screen.getByRole('link', { name: 'Your attempts' })).toHaveAttribute(
      'href',
      '/attempts',
    );
  });
});
