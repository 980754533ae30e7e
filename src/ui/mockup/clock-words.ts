import { formatDecimal } from '#engine/measure/format-number.ts';
import { rational } from '#engine/measure/rational.ts';
import type { Language } from '#engine/text.ts';

const minutesInHour = 60;
const minutesInDay = 24 * minutesInHour;

/** A time of whole minutes as a clock would be read: `0 min`, `1 h 5 min`, `1 day 2 min`. */
export function minutesWords(minutes: number, language: Language): string {
  const parts = [
    { unit: 'day' as const, amount: Math.floor(minutes / minutesInDay) },
    { unit: 'h' as const, amount: Math.floor((minutes % minutesInDay) / minutesInHour) },
    { unit: 'min' as const, amount: minutes % minutesInHour },
  ];
  const said = parts.filter(({ amount }) => amount > 0);
  const words = (said.length > 0 ? said : parts.slice(-1)).map(({ unit, amount }) =>
    unit === 'day' ? dayWords(amount, language) : `${amount} ${unit}`,
  );
  return words.join(' ');
}

const dayWords = (days: number, language: Language): string =>
  language === 'en'
    ? `${days} ${days === 1 ? 'day' : 'days'}`
    : `${days} ${days === 1 ? 'día' : 'días'}`;

/** Points to a tenth: `0.5`. */
export const pointsWords = (points: number): string =>
  formatDecimal(rational(Math.round(points * 10), 10), 1);
