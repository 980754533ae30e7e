import type { SourceId } from '#engine/method/method.ts';
import { readings, type Source } from './content.ts';
import { entries, record } from './group.ts';
import { mapped, optional, wrongShape, type Reader } from './reader.ts';
import { keyAt, type SourceFile } from './source-file.ts';
import { oneOf, plain } from './words.ts';

/** The entry for what the trade does and nobody published. */
const unpublished = 'common-practice';

const year: Reader<number> = {
  blank: 0,
  read: (here) => {
    const given = plain.read(here);
    if (given !== '' && !/^\d{4}$/.test(given)) {
      wrongShape(here, 'a year', 'Write it in four digits: 2005.');
    }
    return Number(given);
  },
};

const address: Reader<string> = {
  blank: '',
  read: (here) => {
    const given = plain.read(here);
    if (given !== '' && !URL.canParse(given)) {
      wrongShape(here, 'an address', 'Write it in full: https://...');
    }
    return given;
  },
};

const source = record({
  title: plain,
  publisher: optional(plain, undefined),
  clause: optional(plain, undefined),
  year: optional(year, undefined),
  address: optional(address, undefined),
  read: oneOf(readings, 'UNKNOWN_READING', 'way of reading a source'),
});

export const sources: Reader<readonly Source[]> = mapped(
  entries(source, 'a group of sources, each under its id'),
  (found) => found.map(([id, value]) => ({ ...value, id: id as SourceId })),
);

export function checkPublishers(file: SourceFile, found: readonly Source[]): void {
  for (const { id, publisher } of found) {
    if (publisher !== undefined || id === unpublished) continue;
    file.fault(
      'MISSING_KEY',
      keyAt(file, [id]),
      `"publisher" is missing.`,
      `Say who published it; only "${unpublished}" has no publisher.`,
    );
  }
}
