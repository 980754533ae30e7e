import type { Condition, SiteQuestion } from '#engine/method/site.ts';

/**
 * Whether some site meets all of the conditions. A site answers each question freely, so they meet
 * if and only if, question by question, they allow a value in common. A question or a value that
 * there is not has had its own fault, and counts as no condition.
 */
export const canMeet = (
  questions: readonly SiteQuestion[],
  ...conditions: readonly Condition[]
): boolean =>
  questions.every(({ id, values }) => {
    const known = values.map((value) => value.id);
    const demands = conditions.flatMap((condition) => {
      const allowed = condition.get(id);
      return allowed?.every((value) => known.includes(value)) ? [allowed] : [];
    });
    return (
      demands.length === 0 || known.some((value) => demands.every((each) => each.includes(value)))
    );
  });
