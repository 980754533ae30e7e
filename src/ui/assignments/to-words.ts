const most = 3;

/** For whom work is, by name; of many the first few. */
export const toWords = (names: readonly string[]): string =>
  [...names.slice(0, most), ...(names.length > most ? ['…'] : [])].join(', ');
