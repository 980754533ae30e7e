import { render, screen } from '@testing-library/svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import DueSheet from '#ui/due/DueSheet.svelte';
import { outbox } from '#ui/sending/sending.ts';

const known = { methods: [], takeoffs: [], topics: [] };

/** The server, as slow as is wanted. */
let answer: (response: Response) => void;
beforeEach(() => {
  localStorage.clear();
  outbox.recall();
  outbox.isAsked = false;
  vi.stubGlobal('fetch', () => new Promise<Response>((resolve) => (answer = resolve)));
});
afterEach(() => vi.unstubAllGlobals());

test('nobody is told to sign in before it is known that they are not', async () => {
  render(DueSheet, { known });
  const asking = outbox.send();
  expect(screen.getByRole('status')).toHaveTextContent('Reading');
  expect(screen.queryByRole('link', { name: 'Sign in' })).toBeNull();
  expect(screen.queryByRole('heading', { name: 'Sending' })).toBeNull();
  answer(Response.json({ name: null, companies: [] }));
  await asking;
  expect(await screen.findByRole('link', { name: 'Sign in' })).toBeVisible();
  expect(screen.getByRole('heading', { name: 'Sending' })).toBeVisible();
});

test('without signal it ends, too', async () => {
  render(DueSheet, { known });
  const asking = outbox.send();
  answer(new Response(null, { status: 503 }));
  await asking;
  expect(await screen.findByRole('link', { name: 'Sign in' })).toBeVisible();
});
