/** ISO 8601 in UTC to the millisecond, so that the order of instants is that of their text. */
export type Instant = string;

export type Json = string;

/** A day of the calendar, ISO 8601. */
export type Day = string;
