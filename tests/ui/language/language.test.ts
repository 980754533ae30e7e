import { render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, test } from 'vitest';
import Switches from '#ui/frame/Switches.svelte';
import { language, say } from '#ui/language/language.svelte.ts';
import { cookieName } from '#ui/messages/generated/runtime.js';
import SeverityMark from '#ui/sheet/SeverityMark.svelte';

afterEach(() => language.choose('en'));

describe('truth', () => {
  test('choosing the other language rewrites what is on the screen in place', async () => {
    render(SeverityMark, { severity: 'critical' });
    render(Switches);
    const mark = screen.getByText('Critical');

    await userEvent.click(screen.getByRole('button', { name: 'Español' }));

    expect(mark).toHaveTextContent('Crítica');
    expect(screen.getByRole('button', { name: 'English' })).toBeInTheDocument();
  });

  test('the page says which language it is in, and a cookie remembers it', async () => {
    render(Switches);
    await userEvent.click(screen.getByRole('button', { name: 'Español' }));

    expect(document.documentElement).toHaveAttribute('lang', 'es');
    expect(document.cookie).toContain(`${cookieName}=es`);
  });

  test('the switch is named in the language that it leads to', async () => {
    render(Switches);
    expect(screen.getByRole('button', { name: 'Español' })).toHaveAttribute('lang', 'es');
    await userEvent.click(screen.getByRole('button', { name: 'Español' }));
    expect(screen.getByRole('button', { name: 'English' })).toHaveAttribute('lang', 'en');
  });

  test('content is said in the language of the screen', () => {
    const text = { en: 'seam', es: 'junta' };
    expect(say(text)).toBe('seam');
    language.choose('es');
    expect(say(text)).toBe('junta');
  });

  test('numbers have a decimal point in both languages', () => {
    const written = () => new Intl.NumberFormat(language.locale).format(1250.5);
    expect(written()).toBe('1,250.5');
    language.choose('es');
    expect(written()).toBe('1,250.5');
  });

  test('a kept page turns to the language that was chosen since', () => {
    document.cookie = `${cookieName}=es; path=/`;
    language.recall();
    expect(language.current).toBe('es');
    expect(document.documentElement).toHaveAttribute('lang', 'es');
  });

  test('a cookie with no language in it changes nothing', () => {
    document.cookie = `${cookieName}=xx; path=/`;
    language.recall();
    expect(language.current).toBe('en');
  });
});
