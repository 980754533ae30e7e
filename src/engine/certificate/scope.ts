import type { Period } from '#engine/calendar.ts';
import type { PartKind, Scheme, SchemeId } from '#engine/exam/scheme.ts';
import type { Method, MethodId } from '#engine/method/method.ts';
import type { Text } from '#engine/text.ts';

/** The walls of one method: those that have one of the answers to each of the questions. */
export type CoveredWalls = {
  readonly method: Text;
  readonly where: readonly { readonly question: Text; readonly answers: readonly Text[] }[];
};

export type ExaminedPart = {
  readonly id: string;
  readonly kind: PartKind;
  readonly title: Text;
  readonly evidences: Text;
};

/**
 * What a scheme said on the day of a certificate, in words: so that the certificate goes on to say what
 * it said, whatever becomes of the scheme.
 */
export type Scope = {
  readonly scheme: SchemeId;
  readonly title: Text;
  readonly purpose: Text;
  /** What governs besides, and what a certificate does not say. */
  readonly note: Text;
  readonly walls: readonly CoveredWalls[];
  readonly parts: readonly ExaminedPart[];
  /** So long before its end it is due for renewal. */
  readonly renewalOpens: Period;
};

type Methods = ReadonlyMap<MethodId, Pick<Method, 'title' | 'site'>>;

/** Methods that are not known are passed over: the compiler has refused a scheme that names one. */
export const scopeOf = (scheme: Scheme, methods: Methods): Scope => ({
  scheme: scheme.id,
  title: scheme.title,
  purpose: scheme.purpose,
  note: scheme.note,
  walls: [...scheme.covers].flatMap(([id, condition]) => {
    const method = methods.get(id);
    if (!method) return [];
    const where = method.site.flatMap(({ id: question, name, values }) => {
      const wanted = condition.get(question);
      const answers = values.filter((value) => wanted?.includes(value.id));
      return wanted ? [{ question: name, answers: answers.map((answer) => answer.name) }] : [];
    });
    return [{ method: method.title, where }];
  }),
  parts: scheme.parts.map(({ id, kind, title, evidences }) => ({ id, kind, title, evidences })),
  renewalOpens: scheme.renewal.opens,
});
