/**
 * Tells errors of a database that cannot work for now from faults of the app: whoever asked may ask
 * again. Codes: SQLite, "Result and Error Codes" (sqlite.org/rescode.html); PostgreSQL 15 documentation,
 * appendix A, classes 08, 53, 57P and 55P03; the rest are the system's when a server is not reached.
 */
const sqlite: Readonly<Record<number, Outage>> = {
  5: 'BUSY',
  6: 'BUSY',
  8: 'UNWRITABLE',
  10: 'UNWRITABLE',
  13: 'FULL',
  14: 'UNWRITABLE',
};

export type Outage = 'AWAY' | 'BUSY' | 'FULL' | 'UNWRITABLE';

const system: readonly string[] = [
  'ECONNREFUSED',
  'ECONNRESET',
  'ENOENT',
  'ENOTFOUND',
  'EPIPE',
  'ETIMEDOUT',
];

const field = (error: object, name: string): unknown =>
  name in error ? (error as Readonly<Record<string, unknown>>)[name] : undefined;

function ofPostgres(code: string): Outage | undefined {
  if (code === '53100') return 'FULL';
  if (code === '55P03' || code === '40001' || code === '40P01') return 'BUSY';
  return /^(08|53|57P)/.test(code) ? 'AWAY' : undefined;
}

/** What `pg` says without a code when its connection ends under it, or has ended before a rollback. */
const lost =
  /^(Connection terminated|timeout exceeded when trying to connect)|and is not queryable$/;

/** Undefined for an error that is no outage. */
export function outageOf(error: unknown): Outage | undefined {
  if (typeof error !== 'object' || error === null) return undefined;
  const [code, errcode] = [field(error, 'code'), field(error, 'errcode')];
  // The lower byte is the kind; the others say more of it.
  if (code === 'ERR_SQLITE_ERROR' && typeof errcode === 'number') return sqlite[errcode & 0xff];
  if (typeof code === 'string') {
    const isSystem = system.includes(code) && typeof field(error, 'syscall') === 'string';
    const found = isSystem ? 'AWAY' : ofPostgres(code);
    if (found) return found;
  }
  if (error instanceof AggregateError) return error.errors.map(outageOf).find(Boolean);
  if (error instanceof Error && lost.test(error.message)) return 'AWAY';
  return outageOf(field(error, 'cause'));
}
