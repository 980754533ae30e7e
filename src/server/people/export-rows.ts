const jsonColumns = new Set([
  'played',
  'detail',
  'tally',
  'scope',
  'filled',
  'asks',
  'evidence',
  'examiners',
]);

const plain = (value: unknown): unknown => (value instanceof Date ? value.toISOString() : value);

/** Instants as text and JSON as what it stands for, in every row alike. */
export const written = (rows: readonly object[]): readonly Readonly<Record<string, unknown>>[] =>
  rows.map((row) =>
    Object.fromEntries(
      Object.entries(row).map(([name, value]: [string, unknown]) => [
        name,
        jsonColumns.has(name) && typeof value === 'string'
          ? (JSON.parse(value) as unknown)
          : plain(value),
      ]),
    ),
  );
