/**
 * What must stand in an AchievementCredential: Open Badges 3.0 (1EdTech openbadges-specification,
 * read 2025-04-07) and the W3C Verifiable Credentials Data Model 2.0 that it goes by.
 */
import { contexts } from './credential.ts';
import { idOf } from './claims.ts';
import { secondsOf } from './instant.ts';

export const propertyFaults = [
  'CONTEXT_WRONG',
  'ID_MISSING',
  'TYPE_WRONG',
  'ISSUER_WRONG',
  'VALID_FROM_WRONG',
  'VALID_UNTIL_WRONG',
  'SUBJECT_WRONG',
  'SUBJECT_UNIDENTIFIED',
  'ACHIEVEMENT_WRONG',
  'CRITERIA_MISSING',
  'EVIDENCE_WRONG',
  'STATUS_WRONG',
] as const;
export type PropertyFault = (typeof propertyFaults)[number];

type Fields = Readonly<Record<string, unknown>>;

const isObject = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const objectOf = (value: unknown): Fields => (isObject(value) ? value : {});
const isText = (value: unknown): value is string => typeof value === 'string' && value !== '';
const isAddress = (value: unknown): boolean =>
  isText(value) && /^[a-z][a-z\d+.-]*:\S+$/i.test(value);

/** A type may stand alone or in a list. */
const hasType = (value: unknown, ...wanted: readonly string[]): boolean =>
  [value].flat().some((type) => typeof type === 'string' && wanted.includes(type));

const isIdentity = (value: unknown): boolean =>
  isObject(value) &&
  hasType(value['type'], 'IdentityObject') &&
  typeof value['hashed'] === 'boolean' &&
  isText(value['identityHash']) &&
  isText(value['identityType']);

const isEvidence = (value: unknown): boolean =>
  isObject(value) && hasType(value['type'], 'Evidence');

type Rule = (credential: Fields) => boolean;

const rules: Readonly<Record<PropertyFault, Rule>> = {
  CONTEXT_WRONG: ({ '@context': context }) =>
    Array.isArray(context) && contexts.every((wanted, place) => context[place] === wanted),
  ID_MISSING: ({ id }) => isAddress(id),
  TYPE_WRONG: ({ type }) =>
    hasType(type, 'VerifiableCredential') &&
    hasType(type, 'AchievementCredential', 'OpenBadgeCredential'),
  ISSUER_WRONG: ({ issuer }) =>
    isAddress(idOf(issuer)) && hasType(objectOf(issuer)['type'], 'Profile'),
  VALID_FROM_WRONG: ({ validFrom }) => secondsOf(validFrom) !== undefined,
  VALID_UNTIL_WRONG: ({ validFrom, validUntil }) =>
    validUntil === undefined ||
    (secondsOf(validUntil) ?? -Infinity) >= (secondsOf(validFrom) ?? -Infinity),
  SUBJECT_WRONG: ({ credentialSubject: subject }) =>
    isObject(subject) && hasType(subject['type'], 'AchievementSubject'),
  SUBJECT_UNIDENTIFIED: ({ credentialSubject: subject }) => {
    const { id, identifier } = objectOf(subject);
    const all: readonly unknown[] = identifier === undefined ? [] : [identifier].flat();
    return all.every(isIdentity) && (isAddress(id) || (id === undefined && all.length > 0));
  },
  ACHIEVEMENT_WRONG: ({ credentialSubject: subject }) => {
    const { id, type, name, description } = objectOf(objectOf(subject)['achievement']);
    return isAddress(id) && hasType(type, 'Achievement') && isText(name) && isText(description);
  },
  CRITERIA_MISSING: ({ credentialSubject: subject }) => {
    const { criteria } = objectOf(objectOf(subject)['achievement']);
    const { id, narrative } = objectOf(criteria);
    return isAddress(id) || isText(narrative);
  },
  EVIDENCE_WRONG: ({ evidence }) =>
    evidence === undefined || (Array.isArray(evidence) && evidence.every(isEvidence)),
  STATUS_WRONG: ({ credentialStatus: status }) =>
    status === undefined || (isObject(status) && isAddress(status['id']) && isText(status['type'])),
};

/** Everything that is missing or wrong, each once, in the order of the list. */
export const propertyFaultsOf = (credential: Fields): readonly PropertyFault[] =>
  propertyFaults.filter((code) => !rules[code](credential));
