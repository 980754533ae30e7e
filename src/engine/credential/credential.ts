/**
 * A certificate as an AchievementCredential of Open Badges 3.0 (1EdTech), which is a credential of the
 * W3C Verifiable Credentials Data Model 2.0. It says what was examined and until when it holds, and
 * leads to the address where its present state is told.
 */
import type { IsoDate } from '#engine/calendar.ts';
import type { CoveredWalls, Scope } from '#engine/certificate/scope.ts';
import type { Language } from '#engine/text.ts';
import type { Issuer } from './issuer.ts';

export const contexts = [
  'https://www.w3.org/ns/credentials/v2',
  'https://purl.imsglobal.org/spec/ob/v3p0/context-3.0.3.json',
] as const;

export type Credential = ReturnType<typeof credentialOf>;

/** What of a certificate goes into it. */
export type Certified = {
  /** Where its state is told; the identifiers of credential and holder stand under it. */
  readonly address: string;
  /** Counts from 1 with each time it is put on paper anew. */
  readonly issue: number;
  readonly name: string;
  readonly issuer: Issuer & { readonly name: string };
  readonly scope: Scope;
  readonly passed: readonly { readonly part: string; readonly on: IsoDate }[];
  readonly grantedOn: IsoDate;
  /** The last day on which it holds. */
  readonly until: IsoDate;
};

const said = {
  covers: { en: 'It covers', es: 'Abarca' },
  passed: { en: 'Passed on', es: 'Aprobado el' },
} as const;

/** `Base of wall (Corner: No corner)`. */
export const wallWords = ({ method, where }: CoveredWalls, language: Language): string => {
  const answers = where.map(
    ({ question, answers }) =>
      `${question[language]}: ${answers.map((answer) => answer[language]).join(' / ')}`,
  );
  return method[language] + (answers.length > 0 ? ` (${answers.join('; ')})` : '');
};

/** As for one certificate, in one language. */
export const credentialOf = (certified: Certified, language: Language) => ({
  '@context': contexts,
  id: credentialId(certified.address, certified.issue),
  type: ['VerifiableCredential', 'AchievementCredential'],
  name: certified.scope.title[language],
  description: certified.scope.purpose[language],
  issuer: { ...issuerProfile(certified.issuer) },
  // Days are those of UTC, as in the records; the last one is included.
  validFrom: `${certified.grantedOn}T00:00:00Z`,
  validUntil: `${certified.until}T23:59:59Z`,
  credentialSubject: subjectOf(certified, language),
  evidence: evidenceOf(certified, language),
  credentialStatus: {
    id: `${certified.address}.json`,
    // A type of its own: the address tells the state of this one certificate, and lists no others.
    type: `${certified.issuer.url}#state-at-address`,
  },
});

export const credentialId = (address: string, issue: number): string => `${address}#issue-${issue}`;

/** What is read at an issuer's address. */
export const issuerProfile = ({ id, url, name }: Issuer & { readonly name: string }) => ({
  id,
  type: ['Profile'],
  name,
  url,
});

const subjectOf = ({ address, name, issuer, scope }: Certified, language: Language) => ({
  id: `${address}#holder`,
  type: ['AchievementSubject'],
  identifier: [
    // The enumeration of the standard differs by revision in whether it knows names.
    { type: 'IdentityObject', hashed: false, identityHash: name, identityType: 'ext:name' },
  ],
  achievement: {
    id: `${issuer.url}#${scope.scheme}`,
    type: ['Achievement'],
    achievementType: 'Certificate',
    inLanguage: language,
    name: scope.title[language],
    description: scope.purpose[language],
    criteria: { narrative: criteriaOf(scope, language) },
  },
});

const criteriaOf = ({ parts, walls, note }: Scope, language: Language): string =>
  [
    ...parts.map(({ title, evidences }) => `- ${title[language]}: ${evidences[language]}`),
    '',
    `${said.covers[language]}: ${walls.map((wall) => wallWords(wall, language)).join('; ')}.`,
    '',
    note[language],
  ].join('\n');

const evidenceOf = ({ passed, scope }: Certified, language: Language) =>
  passed.map(({ part: id, on }) => {
    const part = scope.parts.find((one) => one.id === id);
    return {
      type: ['Evidence'],
      name: part?.title[language] ?? id,
      ...(part ? { description: part.evidences[language] } : {}),
      narrative: `${said.passed[language]} ${on}.`,
    };
  });
