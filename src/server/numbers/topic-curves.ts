import type { Part } from '#engine/exam/scheme.ts';
import type { TopicCurves } from '#engine/statistics/form-precision.ts';
import type { ItemEstimate } from '#engine/statistics/item-fit.ts';

type Item = { readonly topic: string; readonly estimate: ItemEstimate | undefined };

/** The curves that a form of the part is drawn from, so many of each topic as its blueprint asks. */
export const topicCurves = (part: Part, items: readonly Item[]): readonly TopicCurves[] =>
  part.kind === 'written'
    ? [...part.blueprint].map(([topic, count]) => ({
        count,
        curves: items.flatMap(({ topic: own, estimate }) =>
          own === topic && estimate?.estimable
            ? [{ slope: estimate.slope, intercept: estimate.intercept }]
            : [],
        ),
      }))
    : [];
