import type { Declared, DeclaredFault } from '#engine/record/declared.ts';
import { m } from '#ui/messages/generated/messages.js';
import { calendarDay } from '#ui/board/calendar-day.ts';

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

export const issuedWords = ({ issuer, number }: Pick<Declared, 'issuer' | 'number'>): string =>
  number === null ? m.declared_by({ issuer }) : m.declared_by_number({ issuer, number });

export const daysWords = ({
  issuedOn,
  validUntil,
}: Pick<Declared, 'issuedOn' | 'validUntil'>): string => {
  const day = calendarDay(issuedOn);
  return validUntil === null
    ? m.declared_dates({ day })
    : m.declared_dates_until({ day, until: calendarDay(validUntil) });
};
