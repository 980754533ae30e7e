import { render, screen } from '@testing-library/svelte';
import { describe, expect, test } from 'vitest';
import DemoForm from '#ui/account/DemoForm.svelte';
import { m } from '#ui/messages/generated/messages.js';

const empty = { made: undefined, fault: undefined, isThere: false, making: undefined };

describe('the way to the invented company, on an empty start page', () => {
  test('is a form with the code and a button that asks for it', () => {
    const { container } = render(DemoForm, empty);
    const form = container.querySelector('form');
    expect([form?.method, form?.getAttribute('action')]).toEqual(['post', '?/demo']);
    expect(screen.getByRole('button', { name: m.demo_make() })).toBeEnabled();
    expect(screen.getByRole('textbox')).toHaveAttribute('name', 'code');
    expect(screen.getByText(m.demo_lead())).toBeVisible();
  });

  test('cannot be pressed while it is being made, and says how far it is', () => {
    render(DemoForm, { ...empty, making: { done: 12, all: 60 } });
    expect(screen.getByRole('button', { name: m.demo_make() })).toBeDisabled();
    expect(screen.getByRole('status')).toHaveTextContent(m.demo_making_of({ done: 12, all: 60 }));
  });

  test('says of a wrong code that it is wrong', () => {
    render(DemoForm, { ...empty, fault: 'CODE' });
    expect(screen.getByRole('alert')).toHaveTextContent(m.start_code_wrong());
  });

  test('once it is made shows whom to sign in as, and no button to make another', () => {
    const logins = [{ role: 'office', username: 'demo.office' }];
    const made = { people: 60, attempts: 5000, password: 'for looking around', logins };
    render(DemoForm, { ...empty, made });
    expect(screen.getByText('demo.office')).toBeVisible();
    expect(screen.getByText('for looking around')).toBeVisible();
    expect(screen.queryByRole('button')).toBeNull();
  });

  test('where there is one already leads to signing in', () => {
    render(DemoForm, { ...empty, isThere: true });
    expect(screen.getByRole('link', { name: m.account_sign_in() })).toBeVisible();
    expect(screen.queryByRole('button')).toBeNull();
  });
});
