import type { Part, Scheme, SchemeId, SiteAnswers } from '#engine/exam/scheme.ts';
import type { Method, MethodId } from '#engine/method/method.ts';
import { allSites, siteFrom, type Site } from '#engine/method/site.ts';
import { checkName, nearestCure } from '#engine/compile/names.ts';
import type { Opened } from '#engine/compile/opened.ts';
import { missingKey } from '#engine/compile/reader.ts';
import { checkCondition } from '#engine/compile/references.ts';
import { keyAt, placeAt, type Path, type SourceFile } from '#engine/compile/source-file.ts';
import { checkCircles } from './circles.ts';

/** What a scheme can name. Files that could not be read are known by their id. */
export type Known = {
  readonly methods: ReadonlyMap<MethodId, Opened<Method>>;
  readonly methodIds: ReadonlySet<MethodId>;
  readonly familyIds: ReadonlySet<string>;
  readonly schemeIds: ReadonlySet<SchemeId>;
};

/** Everything that a scheme says of other files, and one of its parts of another, holds. */
export function checkSchemes(schemes: ReadonlyMap<SchemeId, Opened<Scheme>>, known: Known): void {
  for (const { file, value: scheme } of schemes.values()) {
    checkCovers(file, scheme, known);
    scheme.requires.forEach((id, index) =>
      checkName(file, 'UNKNOWN_SCHEME', ['requires', index], 'scheme', id, known.schemeIds),
    );
    for (const part of scheme.parts) checkPart(file, scheme, part, known);
    checkRenewal(file, scheme);
  }
  checkCircles(schemes);
}

function checkCovers(file: SourceFile, { covers }: Scheme, { methods, methodIds }: Known): void {
  for (const [id, condition] of covers) {
    const path = ['covers', id];
    checkName(file, 'UNKNOWN_METHOD', path, 'method', id, methodIds);
    const method = methods.get(id)?.value;
    if (method) checkCondition(file, path, method.site, condition);
  }
}

function checkPart(file: SourceFile, scheme: Scheme, part: Part, known: Known): void {
  const path = ['parts', part.id];
  switch (part.kind) {
    case 'written':
      return;
    case 'takeoff':
      part.families.forEach((id, index) => {
        const at = [...path, 'families', index];
        checkName(file, 'UNKNOWN_FAMILY', at, 'family of problems', id, known.familyIds);
      });
      return;
    case 'mock-up':
      checkBuilds(file, scheme, part, known);
      return;
    case 'hands-on': {
      const method = methodOf(file, scheme, path, part.method, known);
      if (method) checkSite(file, scheme, [...path, 'site'], method, part.site);
      checkAgreement(file, path, part);
    }
  }
}

type MockUp = Extract<Part, { readonly kind: 'mock-up' }>;

function checkBuilds(file: SourceFile, scheme: Scheme, part: MockUp, known: Known): void {
  const path = ['parts', part.id];
  const method = methodOf(file, scheme, path, part.method, known);
  if (!method) return;
  const { sites } = part;
  if (sites !== 'random') {
    sites.forEach((site, index) =>
      checkSite(file, scheme, [...path, 'sites', index], method, site),
    );
  }
  const there =
    sites === 'random'
      ? allSites(method.site).filter((site) => covers(scheme, method, site)).length
      : distinct(method, sites);
  if (part.builds > there) {
    const message = `${part.builds} different walls are asked for, and there are ${there}.`;
    const cure = 'Ask for fewer, or give more to draw from.';
    file.fault('ASKS_TOO_MUCH', placeAt(file, [...path, 'builds']), message, cure);
  }
}

/** Sites that differ once what they leave open is filled in; a faulty one had its own fault. */
function distinct({ site: questions }: Method, sites: readonly SiteAnswers[]): number {
  const written = sites.map((answers, index) => {
    const site = siteFrom(questions, answers);
    return site.ok ? JSON.stringify(site.value) : `${index}`;
  });
  return new Set(written).size;
}

/** The method of a part, where there is one that the scheme covers. */
function methodOf(
  file: SourceFile,
  { covers }: Scheme,
  path: Path,
  id: MethodId,
  { methods, methodIds }: Known,
): Method | undefined {
  const at = [...path, 'method'];
  checkName(file, 'UNKNOWN_METHOD', at, 'method', id, methodIds);
  const method = methods.get(id)?.value;
  if (method && !covers.has(id)) notCovered(file, at, `The scheme does not cover "${id}".`);
  return method;
}

function checkSite(
  file: SourceFile,
  scheme: Scheme,
  path: Path,
  method: Method,
  answers: Readonly<Record<string, string>>,
): void {
  const site = siteFrom(method.site, answers);
  if (!site.ok) {
    for (const { code, question, given, known } of site.error) {
      const message =
        code === 'UNKNOWN_SITE_VALUE'
          ? `There is no value of "${question}" "${given}".`
          : `There is no site question "${question}".`;
      const at = [...path, question];
      const place = code === 'UNKNOWN_SITE_VALUE' ? placeAt(file, at) : keyAt(file, at);
      const wanted = code === 'UNKNOWN_SITE_VALUE' ? given : question;
      file.fault(code, place, message, nearestCure(wanted, known));
    }
    return;
  }
  if (!covers(scheme, method, site.value)) {
    notCovered(file, path, 'The scheme does not cover such a wall.');
  }
}

/** A question or a value that there is not has had its own fault, and counts as no condition. */
const covers = (scheme: Scheme, { id, site: questions }: Method, site: Site): boolean =>
  questions.every(({ id: question, values }) => {
    const allowed = scheme.covers.get(id)?.get(question);
    const isSound = allowed?.every((value) => values.some((known) => known.id === value));
    return !allowed || !isSound || allowed.includes(site[question] ?? '');
  });

const notCovered = (file: SourceFile, path: Path, message: string): void =>
  file.fault(
    'NOT_COVERED',
    placeAt(file, path),
    message,
    'Name it under covers, or examine what stands there.',
  );

/** Two examiners can agree or not; one cannot. */
function checkAgreement(
  file: SourceFile,
  path: Path,
  { examiners, agreement }: Extract<Part, { readonly kind: 'hands-on' }>,
): void {
  if (examiners === 2 && !agreement) missingKey(file, keyAt(file, path), 'agreement');
  if (examiners === 1 && agreement) {
    file.fault(
      'UNKNOWN_KEY',
      keyAt(file, [...path, 'agreement']),
      'One examiner agrees with nobody.',
      'Leave it out, or ask for two examiners.',
    );
  }
}

function checkRenewal(file: SourceFile, { parts, renewal }: Scheme): void {
  const known = new Set(parts.map(({ id }) => id as string));
  for (const { part: id, blueprint } of renewal.parts) {
    const path = ['renewal', 'parts', id];
    const part = parts.find((each) => each.id === id);
    if (!part) {
      checkName(file, 'UNKNOWN_PART', path, 'part', id, known);
    } else if (blueprint && part.kind !== 'written') {
      file.fault(
        'UNKNOWN_KEY',
        keyAt(file, [...path, 'blueprint']),
        `"${id}" is no written part, and has no blueprint.`,
        'Leave it out.',
      );
    }
  }
}
