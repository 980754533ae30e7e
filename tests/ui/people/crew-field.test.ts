import { render, screen, waitFor } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, test, vi } from 'vitest';
import TravelFields from '#ui/jobs/TravelFields.svelte';
import { m } from '#ui/messages/generated/messages.js';
import CrewField from '#ui/people/CrewField.svelte';
import type { CrewChoices } from '#engine/record/crew-choices.ts';

const [north, south, far] = ['North', 'South', 'Far away'].map((name) => ({ id: name, name }));
const first: CrewChoices = {
  crews: [north!, south!],
  isMore: true,
  search: '',
  found: 0,
  isCut: false,
};
const finds = (change: Partial<CrewChoices>) => ({ ...first, ...change });

/** The server, as far as it answers who looks for a crew. */
function answering(answer: CrewChoices | undefined) {
  const asked: string[] = [];
  vi.stubGlobal('fetch', (address: string) => {
    asked.push(address);
    const response = answer ? Response.json(answer) : new Response('', { status: 503 });
    return Promise.resolve(response);
  });
  return asked;
}
afterEach(() => vi.unstubAllGlobals());

const field = { label: 'Crew', name: 'crew', company: 'c', value: 'South' };
const list = () => screen.getByRole<HTMLSelectElement>('combobox', { name: 'Crew' });
const listed = () => [...list().options].map(({ text }) => text);
const look = async (name: string) => {
  const user = userEvent.setup();
  await user.type(screen.getByRole('searchbox', { name: m.crews_search() }), name);
  await user.click(screen.getByRole('button', { name: m.crews_look() }));
};

describe('choosing a crew', () => {
  test('is a plain list where all are on it', () => {
    render(CrewField, { ...field, choices: finds({ isMore: false }) });
    expect(list()).toHaveValue('South');
    expect(listed()).toEqual([m.people_crew_none(), 'North', 'South']);
    expect(screen.queryByRole('searchbox')).toBeNull();
  });

  test('looks for others where it is not, and takes the only one found', async () => {
    const asked = answering(finds({ crews: [far!], search: 'far', found: 1 }));
    render(CrewField, { ...field, choices: first });
    expect(screen.getByText(m.crews_not_all())).toBeVisible();
    await look('far');
    await waitFor(() => expect(list()).toHaveValue('Far away'));
    expect(listed()).toEqual([m.people_crew_none(), 'South', 'Far away']);
    expect(screen.getByRole('status')).toHaveTextContent(m.crews_found({ count: 1 }));
    expect(asked).toEqual(['/company/c/crews/found?crew-search=far']);
  });

  test('by the keyboard alone sends no form, and keeps what was chosen among several', async () => {
    answering(finds({ crews: [north!, far!], search: 'a', found: 2, isCut: true }));
    render(CrewField, { ...field, choices: first });
    const user = userEvent.setup();
    await user.tab();
    expect(list()).toHaveFocus();
    await user.tab();
    await user.keyboard('a{Enter}');
    await waitFor(() => expect(listed()).toContain('Far away'));
    expect(list()).toHaveValue('South');
    expect(screen.getByRole('status')).toHaveTextContent(m.crews_narrow());
  });

  test.each([
    ['nothing is found', finds({ crews: [], search: 'x' }), m.crews_none_found],
    ['the server is away', undefined, m.crews_look_failed],
  ])('says so where %s, and loses nothing', async (_, answer, words) => {
    answering(answer);
    render(CrewField, { ...field, choices: first });
    await look('x');
    await waitFor(() => expect(screen.getByRole('status')).toHaveTextContent(words()));
    expect(list()).toHaveValue('South');
  });

  test('leaves out the crew that closes, also when it is found', async () => {
    answering(finds({ crews: [north!, far!], search: 'a', found: 2 }));
    render(CrewField, { ...field, value: null, but: 'North', choices: first });
    expect(listed()).not.toContain('North');
    await look('a');
    await waitFor(() => expect(list()).toHaveValue('Far away'));
    expect(listed()).not.toContain('North');
  });
});

describe('the way of each crew', () => {
  const shown = () => screen.queryAllByRole('spinbutton').map(({ id }) => id).length;

  test('is asked of every crew where all are listed', () => {
    const choices = finds({ isMore: false });
    render(TravelFields, { company: 'c', choices, given: [{ crew: 'North', miles: '40' }] });
    expect(screen.getByLabelText('North')).toHaveValue(40);
    expect(screen.getByLabelText('South')).toHaveValue(null);
  });

  test('is asked of those told and those looked for where there are many', async () => {
    answering(finds({ crews: [far!], search: 'far', found: 1 }));
    const given = [{ crew: 'North', miles: '40' }];
    render(TravelFields, { company: 'c', choices: first, given });
    expect(shown()).toBe(1);
    await userEvent.setup().type(screen.getByLabelText('North'), '5');
    await look('far');
    await waitFor(() => expect(screen.getByLabelText('Far away')).toBeVisible());
    expect(screen.getByLabelText('North')).toHaveValue(405);
    expect(screen.getByLabelText<HTMLInputElement>('Far away').name).toBe('miles-Far away');
  });
});
