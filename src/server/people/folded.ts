/** Text as it is looked up and sorted by: small letters without accents, single spaces. */
export const folded = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()
    .replace(/\s+/g, ' ')
    .trim();

export const searchText = (name: string, number: string | null): string =>
  folded(number === null ? name : `${name} ${number}`);
