import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, test } from 'vitest';
import { tallyOf } from '#engine/tally/tally.ts';
import { whereItGoesWrong } from '#engine/tally/where-it-goes-wrong.ts';
import CrewSheet from '#ui/insight/CrewSheet.svelte';
import { language } from '#ui/language/language.svelte.ts';
import { built } from '../../engine/tracing/built.ts';
import { tinyBundle } from '../tiny-content.ts';

const late = built(['prime@0', 'hang@500 | turn-up=8 in', 'set-edge@500']);
const right = built(['prime@0', 'set-edge@0', 'hang@500 | turn-up=8 in']);

const ana = { id: 'a', name: 'Ana' };
const ben = { id: 'b', name: 'Ben' };
const wall = { kind: 'mockup', about: 'tiny-wall', best: 92.5, lastAt: '2030-05-04T12:00:00.000Z' };

/** Ana builds rightly, Ben as often with the edge too late. */
const troublesOf = (each: number) =>
  whereItGoesWrong(
    tallyOf(
      Array.from({ length: each }, () => [
        { ...right, person: 'a' },
        { ...late, person: 'b' },
      ]).flat(),
    ),
  );

const crew = {
  id: 'c',
  name: 'North',
  isClosed: false,
  isMore: false,
  people: [
    { ...ana, practised: [wall] },
    { ...ben, practised: [] },
  ],
};
const methods = [{ id: tinyBundle.method.id, title: tinyBundle.method.title, attempts: 12 }];
const base = { company: 'x', crew, methods, bundle: tinyBundle, families: [] };

afterEach(() => language.choose('en'));

describe('truth', () => {
  test('says what goes wrong, how often, how surely, for whom, and where to read of it', () => {
    render(CrewSheet, { ...base, troubles: troublesOf(6) });
    const list = screen.getByText('Most surely wrong first').nextElementSibling as HTMLElement;
    const row = within(list).getAllByRole('listitem')[0]!;
    expect(row).toHaveTextContent('“Set the edge” was not done before “Hang the sheet”');
    expect(row).toHaveTextContent('6 of 12');
    expect(row).toHaveTextContent('Goes wrong between 1 in 4 and 3 in 4 of the time. (25–75 %)');
    const who = within(row).getByRole('link', { name: 'Ben 6 of 6' });
    expect(who).toHaveAttribute('href', '/company/x/people/b/points');
    const read = within(row).getByRole('link', { name: 'Read the step' });
    expect(read.getAttribute('href')).toMatch(/^\/methods\/tiny-wall\?.*#hang$/);
    const practise = within(row).getByRole('link', { name: 'Practise this stretch' });
    expect(practise.getAttribute('href')).toMatch(/^\/practise\/tiny-wall\?.*mode=own/);
    expect(screen.queryByRole('link', { name: /^Ana \d/ })).toBeNull();
  });

  test('too few attempts are told as too few', () => {
    render(CrewSheet, { ...base, troubles: troublesOf(2) });
    expect(screen.queryByText('Most surely wrong first')).toBeNull();
    expect(screen.getByText(/^Too few attempts to say/)).toBeVisible();
    expect(screen.getAllByText(/^Anything between/)[0]).toBeVisible();
  });

  test('a line that is touched tells of its trouble', async () => {
    render(CrewSheet, { ...base, troubles: troublesOf(6) });
    const status = screen.getByRole('status');
    expect(status).toHaveTextContent('Touch a step or a line to read more.');
    await userEvent.click(screen.getByRole('button', { name: /^“Set the edge” before/ }));
    expect(status).toHaveTextContent('“Set the edge” was not done before “Hang the sheet”');
    await userEvent.click(screen.getByRole('button', { name: /^“Prime” before/ }));
    expect(status).toHaveTextContent('right in all 12');
  });

  test('each person has the best of each method, or has not practised', () => {
    render(CrewSheet, { ...base, troubles: [] });
    const people = screen.getByRole('heading', { name: 'Who is in it' }).parentElement!;
    const [first, second] = within(people)
      .getAllByRole('link')
      .map((link) => link.closest('li')!);
    expect(first).toHaveTextContent('Ana');
    expect(first).toHaveTextContent('last practised May 4, 2030');
    expect(first).toHaveTextContent('A tiny wall: best 92.5');
    expect(second).toHaveTextContent('Ben has not practised yet');
  });

  test('parts of problems stand with the slips that were told', () => {
    const families = [
      {
        id: 'bars',
        title: { en: 'Bars', es: 'Barras' },
        parts: [
          {
            id: 'buy',
            name: { en: 'Bars to buy', es: 'Barras por comprar' },
            judged: 12,
            wrong: 6,
            rate: { low: 0.25, high: 0.75 },
            isTooFew: false,
            slips: [{ id: 's', tell: { en: 'You left it out.', es: 'Faltó.' }, made: 3 }],
          },
        ],
      },
    ];
    const computed = { ...wall, kind: 'takeoff', about: 'bars' };
    const people = [{ ...ana, practised: [computed] }];
    render(CrewSheet, { ...base, crew: { ...crew, people }, troubles: [], families });
    const section = screen.getByRole('heading', { name: 'Take-off' }).parentElement!;
    expect(section).toHaveTextContent('6 of 12');
    expect(section).toHaveTextContent('You left it out. 3 times');
  });

  test('who has nothing to show is told what to do', () => {
    const none = { ...base, methods: [], bundle: undefined, troubles: [] };
    const { unmount } = render(CrewSheet, { ...none, crew: { ...crew, people: [] } });
    expect(screen.getByText('Nobody is in this crew yet.')).toBeVisible();
    unmount();
    render(CrewSheet, { ...none, crew: { ...crew, people: [{ ...ben, practised: [] }] } });
    expect(screen.getByText('Nobody in this crew has practised yet')).toBeVisible();
    expect(screen.queryByRole('heading', { name: 'Where it goes wrong' })).toBeNull();
  });

  test('is told in Spanish as well', () => {
    language.choose('es');
    render(CrewSheet, { ...base, troubles: troublesOf(6) });
    expect(screen.getByRole('heading', { name: 'Dónde falla' })).toBeVisible();
    expect(screen.getAllByText(/^Falla entre 1 de cada 4 y 3 de cada 4/)[0]).toBeVisible();
  });
});
