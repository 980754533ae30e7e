import type { Attempt } from '#engine/marking/attempt.ts';
import { approximate } from '#engine/measure/rational.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { Drawing } from '#engine/picture/drawing.ts';
import type { Text } from '#engine/text.ts';

/** What a foreman writes down: when each card went up, and what cannot be measured afterwards. */
export type LogLine = {
  readonly card: string;
  readonly say: Text;
  /** The first day is 1. */
  readonly day: number;
  /** As on a clock of 24 hours: `7:05`. */
  readonly time: string;
  readonly settings: readonly { readonly name: Text; readonly value: Quantity }[];
};

const start = 7 * 60;
const dayInMinutes = 24 * 60;

/** Settings that the drawing gives a dimension are left to be measured there. */
export function siteLog(
  { sequence, played }: Attempt,
  { views, parts }: Drawing,
): readonly LogLine[] {
  const cardOf = new Map(parts.map(({ id, card }) => [id, card]));
  const measured = new Set(
    views.flatMap(({ dimensions }) =>
      dimensions.map(({ part, setting }) => `${cardOf.get(part)}/${setting}`),
    ),
  );
  const { method, steps } = sequence;
  return played.map(({ card, settings, minute }) => {
    const found = [...method.steps, ...method.decoys].find(({ id }) => id === card)!;
    const asks = steps.find(({ id }) => id === card)?.asks ?? [];
    const now = start + (minute ? Math.floor(approximate(minute)) : 0);
    return {
      card,
      say: found.say,
      day: 1 + Math.floor(now / dayInMinutes),
      time: timeOf(now % dayInMinutes),
      settings: asks.flatMap(({ id, sheetNumber }) => {
        const value = settings.get(id);
        return value && !measured.has(`${card}/${id}`) ? [{ name: sheetNumber.name, value }] : [];
      }),
    };
  });
}

const timeOf = (minutes: number): string =>
  `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
