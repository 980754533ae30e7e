import { cleanup, render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { IsoDate } from '#engine/calendar.ts';
import { claimsOf } from '#engine/credential/claims.ts';
import { credentialOf } from '#engine/credential/credential.ts';
import { headerFor } from '#engine/credential/header.ts';
import { freshKey, publicOf, signCompact } from '#server/certificates/signature.ts';
import { storeIn } from '#ui/attempts/browser-store.ts';
import CheckAlone from '#ui/certificates/CheckAlone.svelte';
import { checkAlone } from '#ui/certificates/check-alone.ts';
import { aloneWords } from '#ui/certificates/check-words.ts';
import { fetchKeys, keptKeys } from '#ui/certificates/kept-keys.ts';
import { language } from '#ui/language/language.svelte.ts';
import { m } from '#ui/messages/generated/messages.js';
import { certified, moment, origin } from '../../engine/credential/certified.ts';

const [own, other] = [freshKey(), freshKey()];
const signedBy = (key: typeof own, given = certified, id = '1') => {
  const credential = credentialOf(given, 'en');
  const payload = { ...credential, ...claimsOf(credential) };
  return signCompact(key, headerFor(`${origin}/keys/${id}`), payload);
};
const set = { origin, keys: [{ ...publicOf(own), kid: '1', alg: 'EdDSA', use: 'sig' }] };
const when = '2031-01-01T12:00:00.000Z';
const store = storeIn(() => localStorage);
const answering = (body: unknown) => () => Promise.resolve(Response.json(body));
const noSignal = () => Promise.reject(new TypeError('no signal'));
const kept = () => keptKeys(store);
const now = moment(when);

/** With one letter of what was signed put in the place of another. */
const tampered = (text: string) => {
  const [head = '', body = '', tail = ''] = text.split('.');
  const changed = JSON.parse(atob(body.replaceAll('-', '+').replaceAll('_', '/'))) as object;
  const forged = btoa(JSON.stringify({ ...changed, validUntil: '2093-05-01T23:59:59Z' }));
  return [head, forged.replace(/=+$/, ''), tail].join('.');
};

beforeEach(() => {
  localStorage.clear();
  vi.useFakeTimers({ toFake: ['Date'], now: new Date(when) });
});
afterEach(() => {
  cleanup();
  vi.unstubAllGlobals();
  vi.useRealTimers();
  language.choose('en');
});

describe('keys of the issuer', () => {
  test('are fetched once and read again without signal', async () => {
    expect(kept()).toBeUndefined();
    await fetchKeys(store, answering(set), when);
    expect(await fetchKeys(store, noSignal, 'later')).toBeUndefined();
    expect(kept()).toEqual({ origin, at: when, keys: [{ id: '1', key: publicOf(own) }] });
  });

  test.each([
    ['nothing of ours', 'a page'],
    ['no keys', { origin, keys: [] }],
    ['a private key', { origin, keys: [{ ...own, kid: '1' }] }],
  ])('are not kept of an answer with %s', async (_, body) => {
    expect(await fetchKeys(store, answering(body), when)).toBeUndefined();
    expect(kept()).toBeUndefined();
  });
});

describe('a file that is checked alone', () => {
  beforeEach(() => fetchKeys(store, answering(set), when));

  test('says for whom, what, by whom and for how long', async () => {
    expect(await checkAlone(`${signedBy(own)}\n`, kept(), now)).toMatchObject({
      ok: true,
      value: {
        days: 'within',
        says: {
          holder: 'Ana María Ruiz',
          title: certified.scope.title.en,
          issuer: 'North Wall',
          from: '2030-05-01T00:00:00Z',
          until: '2033-05-01T23:59:59Z',
          passed: [expect.stringContaining('2030-04-20')],
          address: certified.address,
        },
      },
    });
  });

  test.each([
    ['early', '2030-04-30T23:59:59Z'],
    ['within', '2030-05-01T00:00:00Z'],
    ['within', '2033-05-01T23:59:59Z'],
    ['over', '2033-05-02T00:00:00Z'],
  ])('is %s its dates at %s', async (days, at) => {
    const checked = await checkAlone(signedBy(own), kept(), moment(at));
    expect(checked).toMatchObject({ ok: true, value: { days } });
  });

  test.each([
    ['WRONG_SIGNATURE', signedBy(other)],
    ['WRONG_SIGNATURE', tampered(signedBy(own))],
    ['UNKNOWN_KEY', signedBy(other, certified, '2')],
    [
      'WRONG_ISSUER',
      signedBy(own, {
        ...certified,
        issuer: { id: 'https://a.example', url: 'https://a.example', name: 'A' },
      }),
    ],
    ['NOT_COMPACT', 'a shopping list'],
    ['NOT_COMPACT', 'a'.repeat(70_000)],
  ] as const)('is refused: %s', async (error, text) => {
    expect(await checkAlone(text, kept(), now)).toEqual({ ok: false, error });
  });

  test('of a forged end is refused for the signature, before its days are looked at', async () => {
    const later = moment('2040-01-01T00:00:00Z');
    const checked = await checkAlone(tampered(signedBy(own)), kept(), later);
    expect(checked).toEqual({ ok: false, error: 'WRONG_SIGNATURE' });
  });
});

describe('the page', () => {
  const file = (text: string) => new File([text], 'credential.jwt', { type: 'application/jwt' });
  const choose = (text: string) =>
    userEvent.upload(screen.getByLabelText(m.cert_check_choose()), file(text));
  const shown = () => screen.findByRole('group', { name: /./ });

  test('keeps the keys with signal, and without it reads a file and says what was not asked', async () => {
    vi.stubGlobal('fetch', answering(set));
    const { unmount } = render(CheckAlone);
    await screen.findByText(/kept on this device since/);
    unmount();

    vi.stubGlobal('fetch', noSignal);
    render(CheckAlone);
    await choose(signedBy(own));
    expect(await shown()).toHaveAccessibleName(m.check_within());
    expect(screen.getByText(m.check_state_not_asked())).toBeVisible();
    expect(screen.getByText('Ana María Ruiz')).toBeVisible();
    expect(screen.getByText('May 1, 2033')).toBeVisible();
    const ask = screen.getByRole('link', { name: m.check_state_ask() });
    expect(ask).toHaveAttribute('href', certified.address);
  });

  test('takes the text of a file as well', async () => {
    await fetchKeys(store, answering(set), when);
    vi.stubGlobal('fetch', noSignal);
    render(CheckAlone);
    expect(screen.getByRole('button', { name: m.check_press() })).toBeDisabled();
    await userEvent.click(screen.getByLabelText(m.check_paste()));
    await userEvent.paste(signedBy(own, { ...certified, until: '2030-12-31' as IsoDate }));
    await userEvent.click(screen.getByRole('button', { name: m.check_press() }));
    expect(await shown()).toHaveAccessibleName(m.check_over());
    expect(screen.getByText('December 31, 2030')).toBeVisible();
  });

  test.each([
    ['that was changed', tampered(signedBy(own)), m.cert_check_signature],
    ['of a key that is not kept', signedBy(other, certified, '2'), () => 'a key that is not among'],
    ['that is none', 'a shopping list', m.cert_check_form],
  ])('says of a file %s not to trust it, and why', async (_, text, why) => {
    await fetchKeys(store, answering(set), when);
    vi.stubGlobal('fetch', noSignal);
    render(CheckAlone);
    await choose(text);
    const verdict = await shown();
    expect(verdict).toHaveAccessibleName(m.cert_check_wrong());
    expect(verdict).toHaveTextContent(why());
    expect(screen.queryByText('Ana María Ruiz')).toBeNull();
  });

  test('without any keys says that it cannot check, and how it could', async () => {
    vi.stubGlobal('fetch', noSignal);
    render(CheckAlone);
    await screen.findByText(m.check_keys_none());
    await choose(signedBy(own));
    const verdict = await shown();
    expect(verdict).toHaveAccessibleName(m.check_unable());
    expect(verdict).toHaveTextContent(m.check_keys_none());
  });

  test('says every refusal in both languages', () => {
    for (const locale of ['en', 'es'] as const) {
      language.choose(locale);
      for (const code of [
        'NO_KEYS',
        'CANNOT_CHECK',
        'UNKNOWN_KEY',
        'WRONG_ISSUER',
        'KEY_OF_ANOTHER',
        'WRONG_SIGNATURE',
        'CLAIM_DIFFERS',
        'NOT_COMPACT',
      ] as const) {
        expect(aloneWords(code, undefined).cure.length).toBeGreaterThan(20);
      }
    }
  });
});
