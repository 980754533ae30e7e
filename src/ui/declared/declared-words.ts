import { m } from '#ui/messages/generated/messages.js';
import { calendarDay } from '#ui/board/calendar-day.ts';

export type DeclaredRow = {
  readonly id: string;
  readonly title: string;
  readonly issuer: string;
  readonly number: string | null;
  readonly scheme: string | null;
  readonly issuedOn: string;
  readonly validUntil: string | null;
};

export type DeclaredFault =
  'title' | 'issuer' | 'number' | 'scheme' | 'issuedOn' | 'validUntil' | 'reason' | 'ABSENT';

export const faultWords: Readonly<Record<DeclaredFault, () => string>> = {
  title: m.declared_wrong_text,
  issuer: m.declared_wrong_text,
  number: m.declared_wrong_text,
  scheme: m.declared_wrong_scheme,
  issuedOn: m.declared_wrong_issued,
  validUntil: m.declared_wrong_until,
  reason: m.declared_wrong_reason,
  ABSENT: m.declared_absent,
};

export const issuedWords = ({ issuer, number }: DeclaredRow): string =>
  number === null ? m.declared_by({ issuer }) : m.declared_by_number({ issuer, number });

export const daysWords = ({ issuedOn, validUntil }: DeclaredRow): string => {
  const day = calendarDay(issuedOn);
  return validUntil === null
    ? m.declared_dates({ day })
    : m.declared_dates_until({ day, until: calendarDay(validUntil) });
};
