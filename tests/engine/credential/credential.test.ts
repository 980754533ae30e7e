import { describe, expect, test } from 'vitest';
import { claimsOf, differingClaims } from '#engine/credential/claims.ts';
import { credentialOf } from '#engine/credential/credential.ts';
import { headerFor, headerFrom } from '#engine/credential/header.ts';
import { secondsOf } from '#engine/credential/instant.ts';
import { propertyFaults, propertyFaultsOf } from '#engine/credential/required.ts';
import { languages } from '#engine/text.ts';
import { certified } from './certified.ts';

const credential = credentialOf(certified, 'en');

describe('the credential of a certificate', () => {
  test.each(languages)('lacks nothing that the standards ask for in %s', (language) => {
    expect(propertyFaultsOf(credentialOf(certified, language))).toEqual([]);
  });

  test('says what was examined, what it covers, until when, and where its state is told', () => {
    expect(credential).toMatchObject({
      id: 'https://underlap.example/verify/AAAAAAAAAAAAAAAAAAAAAA#issue-1',
      name: 'Base of wall installer',
      issuer: { id: 'did:web:underlap.example:issuers:north-wall', name: 'North Wall' },
      validFrom: '2030-05-01T00:00:00Z',
      validUntil: '2033-05-01T23:59:59Z',
      credentialSubject: {
        identifier: [{ identityHash: 'Ana María Ruiz', hashed: false }],
        achievement: { inLanguage: 'en' },
      },
      evidence: [{ name: 'Written questions', narrative: 'Passed on 2030-04-20.' }],
      credentialStatus: { id: 'https://underlap.example/verify/AAAAAAAAAAAAAAAAAAAAAA.json' },
    });
    const { narrative } = credential.credentialSubject.achievement.criteria;
    expect(narrative).toContain('Base of wall (Joint: One sheet, no seam / Seam of two sheets;');
    expect(narrative).toContain('accredits nobody');
  });

  test('says it in Spanish too', () => {
    const said = credentialOf(certified, 'es');
    expect(said.name).toBe('Instalador de base del muro');
    expect(said.evidence[0]?.narrative).toBe('Aprobado el 2030-04-20.');
    expect(said.credentialSubject.achievement.criteria.narrative).toContain(
      'Abarca: Base del muro',
    );
  });
});

describe('what is asked for', () => {
  type Tree = { [name: string]: unknown };

  /** A copy with something else at a place, or nothing. */
  const without = (place: string, instead?: unknown): Tree => {
    const copy = structuredClone(credential) as unknown as Tree;
    const names = place.split('.');
    const last = names.pop()!;
    const at = names.reduce((tree, name) => tree[name] as Tree, copy);
    if (instead === undefined) delete at[last];
    else at[last] = instead;
    return copy;
  };
  const achievement = 'credentialSubject.achievement';
  const [first, second] = credential['@context'];

  test.each([
    ['CONTEXT_WRONG', '@context', [second, first]],
    ['CONTEXT_WRONG', '@context', [first]],
    ['CONTEXT_WRONG', '@context', first],
    ['ID_MISSING', 'id'],
    ['ID_MISSING', 'id', 'no address'],
    ['TYPE_WRONG', 'type', ['VerifiableCredential']],
    ['TYPE_WRONG', 'type', ['AchievementCredential']],
    ['TYPE_WRONG', 'type', 'VerifiableCredential'],
    ['ISSUER_WRONG', 'issuer'],
    ['ISSUER_WRONG', 'issuer.id'],
    ['ISSUER_WRONG', 'issuer.type'],
    ['ISSUER_WRONG', 'issuer', 'https://underlap.example'],
    ['VALID_FROM_WRONG', 'validFrom'],
    ['VALID_FROM_WRONG', 'validFrom', '2030-05-01'],
    // A time without its zone is no instant.
    ['VALID_FROM_WRONG', 'validFrom', '2030-05-01T00:00:00'],
    ['VALID_UNTIL_WRONG', 'validUntil', '2030-04-30T23:59:59Z'],
    ['VALID_UNTIL_WRONG', 'validUntil', 'soon'],
    ['SUBJECT_WRONG', 'credentialSubject.type'],
    ['SUBJECT_WRONG', 'credentialSubject.type', ['Person']],
    ['SUBJECT_UNIDENTIFIED', 'credentialSubject.id', 'no address'],
    ['SUBJECT_UNIDENTIFIED', 'credentialSubject.identifier', [{ type: 'IdentityObject' }]],
    ['ACHIEVEMENT_WRONG', `${achievement}.id`],
    ['ACHIEVEMENT_WRONG', `${achievement}.type`],
    ['ACHIEVEMENT_WRONG', `${achievement}.name`],
    ['ACHIEVEMENT_WRONG', `${achievement}.description`],
    ['CRITERIA_MISSING', `${achievement}.criteria`],
    ['CRITERIA_MISSING', `${achievement}.criteria`, {}],
    ['EVIDENCE_WRONG', 'evidence', {}],
    ['EVIDENCE_WRONG', 'evidence', [{ name: 'Written questions' }]],
    ['STATUS_WRONG', 'credentialStatus.type'],
    ['STATUS_WRONG', 'credentialStatus.id'],
  ] as const)('%s and nothing else: %s', (code, place, instead?: unknown) => {
    expect(propertyFaultsOf(without(place, instead))).toEqual([code]);
  });

  test('without a credential everything is missing that must be there', () => {
    expect(propertyFaultsOf({})).toEqual(
      propertyFaults.filter(
        (code) => !['VALID_UNTIL_WRONG', 'EVIDENCE_WRONG', 'STATUS_WRONG'].includes(code),
      ),
    );
  });

  test('a subject is known by its id or by an identifier, and by one at least', () => {
    const { type, achievement, identifier } = credential.credentialSubject;
    const known = (rest: object) =>
      propertyFaultsOf({ ...credential, credentialSubject: { type, achievement, ...rest } });
    expect(known({ identifier })).toEqual([]);
    expect(known({ id: credential.id })).toEqual([]);
    expect(known({})).toEqual(['SUBJECT_UNIDENTIFIED']);
  });
});

describe('the claims', () => {
  const payload = { ...credential, ...claimsOf(credential) };

  test('are equal to their fields', () => {
    expect(claimsOf(credential)).toEqual({
      iss: 'did:web:underlap.example:issuers:north-wall',
      jti: credential.id,
      nbf: 1_903_824_000,
      sub: credential.credentialSubject.id,
      exp: 1_998_604_799,
    });
    expect(differingClaims(payload)).toEqual([]);
  });

  test.each(['iss', 'jti', 'nbf', 'sub', 'exp'] as const)(
    '%s may not differ or be left out',
    (claim) => {
      expect(differingClaims({ ...payload, [claim]: 'other' })).toEqual([claim]);
      const { [claim]: _, ...rest } = payload;
      expect(differingClaims(rest)).toEqual([claim]);
    },
  );

  test('what ends at no time has no end among its claims, and need not', () => {
    const { validUntil: _, exp: _exp, ...endless } = payload;
    expect(differingClaims(endless)).toEqual([]);
    expect(differingClaims({ ...endless, exp: 1 })).toEqual(['exp']);
  });
});

describe('an instant', () => {
  test.each([
    ['2030-05-01T00:00:00Z', 1_903_824_000],
    ['2030-04-30T19:00:00-05:00', 1_903_824_000],
    ['2030-05-01T00:00:00.999Z', 1_903_824_000],
    ['2030-05-01T00:00:00', undefined],
    ['2030-05-01', undefined],
    ['2030-13-01T00:00:00Z', undefined],
    [1_903_824_000, undefined],
  ])('%s is %s', (text, seconds) => {
    expect(secondsOf(text)).toBe(seconds);
  });
});

describe('the header', () => {
  const right = headerFor('https://underlap.example/keys/1');
  test('of our own is right', () => {
    expect(headerFrom(right)).toEqual({ ok: true, value: right });
  });

  test.each([
    [{ ...right, alg: 'none' }, 'WRONG_ALGORITHM'],
    [{ ...right, alg: 'HS256' }, 'WRONG_ALGORITHM'],
    [{ ...right, alg: 'eddsa' }, 'WRONG_ALGORITHM'],
    [{ ...right, typ: 'JOSE' }, 'WRONG_TYPE'],
    [{ alg: 'EdDSA', typ: 'JWT' }, 'NO_KEY_NAMED'],
    [{ ...right, kid: 7 }, 'NO_KEY_NAMED'],
    [{ ...right, jwk: { kty: 'OKP', d: 'x' } }, 'PRIVATE_KEY_SHOWN'],
    [{ ...right, jwk: { kty: 'OKP' } }, 'UNKNOWN_HEADER'],
    [{ ...right, b64: false, crit: ['b64'] }, 'UNKNOWN_HEADER'],
    [{ ...right, jku: 'https://evil.example' }, 'UNKNOWN_HEADER'],
  ])('%j is refused: %s', (given, error) => {
    expect(headerFrom(given)).toEqual({ ok: false, error });
  });
});
