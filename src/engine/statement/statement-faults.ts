/**
 * Whether something is a statement of xAPI 1.0.3, as far as this project writes them: all faults at once,
 * each with its place. Rules are those of https://github.com/adlnet/xAPI-Spec, part two: actor, verb and
 * object are required; a number or a truth sent as text is refused; the version is 1.0 with any third part; a
 * scaled score lies from -1 to 1, a raw one from min to max, and min is below max. That nothing is null, that
 * no property is unknown, and that an agent is identified in one way only, stands there too (from memory).
 */
import { isUuid } from '#engine/uuid.ts';

export const statementRules = [
  'NOT_AN_OBJECT',
  'MISSING',
  'UNKNOWN_PROPERTY',
  'NULL',
  'NOT_TEXT',
  'NOT_A_NUMBER',
  'NOT_A_TRUTH',
  'NOT_A_UUID',
  'NOT_AN_IRI',
  'NOT_AN_INSTANT',
  'WRONG_VERSION',
  'NOT_A_LANGUAGE',
  'NOT_ONE_IDENTIFIER',
  'OUT_OF_RANGE',
] as const;
export type StatementRule = (typeof statementRules)[number];

export type StatementFault = { readonly rule: StatementRule; readonly place: string };

type Check = (value: unknown, place: string) => readonly StatementFault[];

const fault = (rule: StatementRule, place: string): readonly StatementFault[] => [{ rule, place }];
const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const when =
  (is: (value: unknown) => boolean, rule: StatementRule): Check =>
  (value, place) =>
    is(value) ? [] : fault(rule, place);

const text = when((value) => typeof value === 'string', 'NOT_TEXT');
const truth = when((value) => typeof value === 'boolean', 'NOT_A_TRUTH');
const number = when((value) => typeof value === 'number' && Number.isFinite(value), 'NOT_A_NUMBER');
const uuid = when(isUuid, 'NOT_A_UUID');
const iri = when(
  (value) => typeof value === 'string' && /^[a-z][a-z0-9+.-]*:[^\s<>"{}|\\^`]+$/i.test(value),
  'NOT_AN_IRI',
);
const instant = when(
  (value) =>
    typeof value === 'string' &&
    /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:?\d\d)$/.test(value) &&
    !Number.isNaN(Date.parse(value)),
  'NOT_AN_INSTANT',
);
const version = when(
  (value) => typeof value === 'string' && /^1\.0(\.\d+)?$/.test(value),
  'WRONG_VERSION',
);
const agentType = when((value) => value === 'Agent', 'UNKNOWN_PROPERTY');
const activityType = when((value) => value === 'Activity', 'UNKNOWN_PROPERTY');

const languageMap: Check = (value, place) => {
  if (!isObject(value)) return fault('NOT_AN_OBJECT', place);
  return Object.entries(value).flatMap(([tag, words]) => [
    ...(/^[a-z]{2,3}(-[a-z0-9]{2,8})*$/i.test(tag)
      ? []
      : fault('NOT_A_LANGUAGE', `${place}.${tag}`)),
    ...text(words, `${place}.${tag}`),
  ]);
};

/** An object with these properties and no others; a `?` after the name says that it may be left out. */
const object =
  (parts: Readonly<Record<string, Check>>, also: Check = () => []): Check =>
  (value, place) => {
    if (!isObject(value)) return fault('NOT_AN_OBJECT', place);
    const at = (name: string): string => (place === '' ? name : `${place}.${name}`);
    const names = Object.keys(parts).map((name) => name.replace('?', ''));
    const missing = Object.keys(parts).filter((name) => !name.endsWith('?') && !(name in value));
    return [
      ...missing.flatMap((name) => fault('MISSING', at(name))),
      ...Object.entries(value).flatMap(([name, inner]) => {
        if (!names.includes(name)) return fault('UNKNOWN_PROPERTY', at(name));
        if (inner === null) return fault('NULL', at(name));
        return (parts[name] ?? parts[`${name}?`])!(inner, at(name));
      }),
      ...also(value, place),
    ];
  };

const identifiers = ['account', 'mbox', 'mbox_sha1sum', 'openid'] as const;

const oneIdentifier: Check = (value, place) =>
  isObject(value) && identifiers.filter((name) => name in value).length === 1
    ? []
    : fault('NOT_ONE_IDENTIFIER', place);

const ordered: Check = (value, place) => {
  if (!isObject(value)) return [];
  const of = (name: string): number | undefined =>
    typeof value[name] === 'number' ? value[name] : undefined;
  const [scaled, raw, min, max] = [of('scaled'), of('raw'), of('min'), of('max')];
  const isOut =
    (scaled !== undefined && Math.abs(scaled) > 1) ||
    (min !== undefined && max !== undefined && min >= max) ||
    (raw !== undefined && raw < (min ?? raw)) ||
    (raw !== undefined && raw > (max ?? raw));
  return isOut ? fault('OUT_OF_RANGE', place) : [];
};

const statement = object({
  'id?': uuid,
  actor: object(
    {
      'objectType?': agentType,
      'name?': text,
      'account?': object({ homePage: iri, name: text }),
      'mbox?': iri,
      'mbox_sha1sum?': text,
      'openid?': iri,
    },
    oneIdentifier,
  ),
  verb: object({ id: iri, 'display?': languageMap }),
  object: object({
    'objectType?': activityType,
    id: iri,
    'definition?': object({ 'name?': languageMap, 'description?': languageMap, 'type?': iri }),
  }),
  'result?': object({
    'success?': truth,
    'completion?': truth,
    'score?': object(
      { 'scaled?': number, 'raw?': number, 'min?': number, 'max?': number },
      ordered,
    ),
  }),
  'timestamp?': instant,
  'version?': version,
});

export const statementFaults = (value: unknown): readonly StatementFault[] => statement(value, '');
