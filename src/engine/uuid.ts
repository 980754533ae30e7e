/**
 * Identifiers that are made where a thing is made and never meet another: UUID version 7 (RFC 9562,
 * 2024, section 5.7), 48 bits of time and 74 of chance, so that they sort by when they were made.
 */

/** Of this many random bytes, 74 bits are used. */
export const uuidBytes = 10;

/** `milliseconds` since 1970 in UTC; `random` are ten random bytes. Throws a RangeError on fewer. */
export function uuid7(milliseconds: number, random: Uint8Array): string {
  if (random.length < uuidBytes) throw new RangeError(`A UUID takes ${uuidBytes} random bytes.`);
  const time = Math.trunc(milliseconds).toString(16).padStart(12, '0').slice(-12);
  const [a = 0, b = 0, c = 0, ...rest] = random;
  const chance = [0x70 | (a & 0x0f), b, 0x80 | (c & 0x3f), ...rest.slice(0, uuidBytes - 3)];
  const hex = time + chance.map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
}

/** Of any version, in small letters. */
export const uuidForm = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

export const isUuid = (value: unknown): value is string =>
  typeof value === 'string' && uuidForm.test(value);
