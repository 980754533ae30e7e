import type { Quantity } from '#engine/measure/quantity.ts';
import type { Text } from '#engine/text.ts';
import { fault, ok, type Result } from '#engine/result.ts';

/** What the weather and the wall impose, and waits may depend on. */
export const weatherConditions = [
  'air-temperature',
  'surface-temperature',
  'relative-humidity',
] as const;
export type WeatherCondition = (typeof weatherConditions)[number];

/** What is known of air and surface; what nobody stated is left out. */
export type Weather = ReadonlyMap<WeatherCondition, Quantity>;

export type SiteQuestion = {
  readonly id: string;
  readonly name: Text;
  /** The first is the usual one. */
  readonly values: readonly SiteValue[];
};

export type SiteValue = {
  readonly id: string;
  readonly name: Text;
  readonly conditions: Weather;
};

/** The answers for one wall: question id to value id, one for every question of the method. */
export type Site = Readonly<Record<string, string>>;

/** Question id to the values that satisfy it; a question that is not named does not matter. */
export type Condition = ReadonlyMap<string, readonly string[]>;

export const holds = (condition: Condition, site: Site): boolean =>
  [...condition].every(([question, values]) => values.includes(site[question] ?? ''));

export type SiteFault = {
  readonly code: 'UNKNOWN_SITE_QUESTION' | 'UNKNOWN_SITE_VALUE';
  readonly question: string;
  readonly given: string;
  /** What could have stood there. */
  readonly known: readonly string[];
};

/** The one door for a site from outside: questions left open take their usual value. */
export function siteFrom(
  questions: readonly SiteQuestion[],
  answers: Readonly<Record<string, string>>,
): Result<Site, readonly SiteFault[]> {
  const known = questions.map((question) => question.id);
  const faults: SiteFault[] = Object.entries(answers)
    .filter(([question]) => !known.includes(question))
    .map(([question, given]) => ({ code: 'UNKNOWN_SITE_QUESTION', question, given, known }));
  const site: Record<string, string> = {};
  for (const { id, values } of questions) {
    const ids = values.map((value) => value.id);
    const given = Object.hasOwn(answers, id) ? (answers[id] ?? '') : (ids[0] ?? '');
    if (ids.includes(given)) site[id] = given;
    else faults.push({ code: 'UNKNOWN_SITE_VALUE', question: id, given, known: ids });
  }
  return faults.length > 0 ? fault(faults) : ok(site);
}

/** Every wall that the questions can describe, the usual one first. */
export function allSites(questions: readonly SiteQuestion[]): readonly Site[] {
  return questions.reduce<readonly Site[]>(
    (sites, { id, values }) =>
      sites.flatMap((site) => values.map((value) => ({ ...site, [id]: value.id }))),
    [{}],
  );
}

/** The weather of a site: what its values state, later questions overriding earlier ones. */
export function conditionsOf(questions: readonly SiteQuestion[], site: Site): Weather {
  return new Map(
    questions.flatMap(({ id, values }) => [
      ...(values.find((value) => value.id === site[id])?.conditions ?? []),
    ]),
  );
}

/** The weather once the steps are done, one after the other: a later one overrides an earlier one. */
export const weatherAfter = (
  weather: Weather,
  steps: Iterable<{ readonly changes: Weather }>,
): Weather => new Map([...weather, ...Array.from(steps).flatMap(({ changes }) => [...changes])]);
