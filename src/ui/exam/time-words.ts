import { m } from '#ui/messages/generated/messages.js';

const minute = 60_000;

/** As a clock shows it, `47:05`, whole seconds begun counted. */
export function timeFigure(milliseconds: number): string {
  const seconds = Math.max(0, Math.ceil(milliseconds / 1000));
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}

/** What is left in words, minutes begun counted. */
export function timeWords(milliseconds: number): string {
  if (milliseconds <= 0) return m.exam_time_over();
  if (milliseconds < minute) return m.exam_last_minute();
  return m.exam_minutes_left({ count: Math.ceil(milliseconds / minute) });
}

export const minutesOf = (milliseconds: number): number => Math.round(milliseconds / minute);
