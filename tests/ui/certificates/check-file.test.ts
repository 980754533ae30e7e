import { describe, expect, test } from 'vitest';
import { claimsOf } from '#engine/credential/claims.ts';
import { credentialOf } from '#engine/credential/credential.ts';
import { headerFor } from '#engine/credential/header.ts';
import { freshKey, publicOf, signCompact } from '#server/certificates/signature.ts';
import { checkFile, type Known } from '#ui/certificates/check-file.ts';
import { byUrgency } from '#ui/certificates/by-urgency.ts';
import { checkWords } from '#ui/certificates/check-words.ts';
import { m } from '#ui/messages/generated/messages.js';
import { certified, moment, origin } from '../../engine/credential/certified.ts';

const [own, other] = [freshKey(), freshKey()];
const kid = `${origin}/keys/1`;
const signedBy = (key: typeof own, given = certified) => {
  const credential = credentialOf(given, 'en');
  return signCompact(key, headerFor(kid), { ...credential, ...claimsOf(credential) });
};
const known: Known = {
  origin,
  address: certified.address,
  state: 'current',
  issue: 1,
  keys: [{ kid, key: publicOf(own) }],
  now: moment('2031-01-01T12:00:00Z'),
};

describe('a file that is checked in the browser', () => {
  test('is right, and says for whom it was made', async () => {
    const checked = await checkFile(`${signedBy(own)}\n`, known);
    expect(checked).toEqual({ ok: true, value: 'Ana María Ruiz' });
  });

  test.each([
    ['WRONG_SIGNATURE', signedBy(other), {}],
    ['UNKNOWN_KEY', signedBy(own), { keys: [] }],
    ['WRONG_ISSUER', signedBy(own), { origin: 'https://other.example' }],
    ['OTHER_CERTIFICATE', signedBy(own), { address: `${origin}/verify/B` }],
    ['EXPIRED', signedBy(own), { now: moment('2033-05-02T00:00:00Z'), state: 'expired' }],
    ['SUSPENDED', signedBy(own), { state: 'suspended' }],
    ['WITHDRAWN', signedBy(own), { state: 'withdrawn' }],
    ['REPLACED', signedBy(own), { issue: 2 }],
    ['NOT_COMPACT', 'a shopping list', {}],
  ] as const)('is refused: %s', async (error, text, change) => {
    expect(await checkFile(text, { ...known, ...change })).toEqual({ ok: false, error });
  });

  test('is told in words, those of form alike', () => {
    expect(checkWords('EXPIRED')).toBe(m.cert_check_days());
    expect(checkWords('TYPE_WRONG')).toBe(m.cert_check_form());
    expect(checkWords('NOT_COMPACT')).toBe(m.cert_check_form());
  });
});

test('certificates stand by how soon they end, each once', () => {
  const rows = [
    { id: 1, reminder: undefined, state: 'current' },
    { id: 2, reminder: 30, state: 'suspended' },
    { id: 3, reminder: undefined, state: 'suspended' },
    { id: 4, reminder: 'ended', state: 'expired' },
    { id: 5, reminder: 0, state: 'due' },
    { id: 6, reminder: undefined, state: 'withdrawn' },
  ] as const;
  expect(byUrgency(rows).map((group) => group.rows.map(({ id }) => id))).toEqual([
    [5],
    [2],
    [4],
    [3],
    [1, 6],
  ]);
});
