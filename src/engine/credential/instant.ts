const stamp = /^-?\d{4,}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d+)?(Z|[+-]\d{2}:\d{2})$/;

/**
 * A dateTimeStamp (W3C XML Schema Definition Language 1.1, part 2, section 3.4.28), which never goes
 * without its time zone, as whole seconds since 1970 in UTC; undefined for anything else.
 */
export function secondsOf(value: unknown): number | undefined {
  if (typeof value !== 'string' || !stamp.test(value)) return undefined;
  const milliseconds = Date.parse(value);
  return Number.isNaN(milliseconds) ? undefined : Math.floor(milliseconds / 1000);
}
