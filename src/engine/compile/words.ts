import { isScalar } from 'yaml';
import { languages, type Language, type Text } from '#engine/text.ts';
import type { DiagnosticCode } from './diagnostic.ts';
import { nearestCure } from './names.ts';
import { pairsIn, unknownKey } from './group.ts';
import { list } from './list.ts';
import { mapped, wrongShape, type Here, type Reader } from './reader.ts';
import { isEmpty, placeOf } from './source-file.ts';

function writtenIn(here: Here, wanted: string, cure: string): string | undefined {
  if (isScalar(here.node) && !isEmpty(here.node)) return String(here.node.value);
  wrongShape(here, wanted, cure);
  return undefined;
}

/** A text in one language only: the title of a standard, an address. */
export const plain: Reader<string> = {
  blank: '',
  read: (here) => writtenIn(here, 'a text', 'Write the text after the colon.') ?? '',
};

/** The id of another entry; whether there is one is asked when everything has been read. */
export const idOf = <Id extends string>(what: string): Reader<Id> => ({
  blank: '' as Id,
  read: (here) =>
    (writtenIn(here, `the id of a ${what}`, `Write the id of one ${what}.`) ?? '') as Id,
});

type UnknownCode = Extract<DiagnosticCode, `UNKNOWN_${string}`>;

/** A word of a closed list, or `null` where another one stands. */
export const choiceOf = <const K extends string>(
  known: readonly K[],
  code: UnknownCode,
  what: string,
): Reader<K | null> => ({
  blank: null,
  read: (here) => {
    const given = writtenIn(here, `a ${what}`, `Write one of: ${known.join(', ')}.`);
    if (given === undefined || !here.node) return null;
    const choice = known.find((word) => word === given);
    if (choice !== undefined) return choice;
    const message = `"${given}" is not a ${what}.`;
    here.file.fault(code, placeOf(here.node), message, nearestCure(given, known));
    return null;
  },
});

export const oneOf = <const K extends string>(
  known: readonly [K, ...K[]],
  code: UnknownCode,
  what: string,
): Reader<K> => mapped(choiceOf(known, code, what), (choice) => choice ?? known[0]);

export const flag: Reader<boolean> = {
  blank: false,
  read: (here) => {
    const given = writtenIn(here, 'true or false', 'Write true or false.');
    if (given !== undefined && given !== 'true' && given !== 'false') {
      wrongShape(here, 'true or false', 'Write true or false.');
    }
    return given === 'true';
  },
};

/** The same thing in every language. */
function inLanguages<T>(
  readOne: (here: Here) => T,
  blank: T,
): Reader<Readonly<Record<Language, T>>> {
  const blanks = Object.fromEntries(languages.map((language) => [language, blank])) as Record<
    Language,
    T
  >;
  const read = (here: Here): Readonly<Record<Language, T>> => {
    const pairs = pairsIn(here, 'a text in each language, { en: ..., es: ... }');
    if (!pairs) return blanks;
    const found = { ...blanks };
    for (const { key, name, node } of pairs) {
      const language = languages.find((known) => known === key);
      if (language) found[language] = readOne({ file: here.file, name, node });
      else unknownKey(here.file, name, key, languages, node);
    }
    languages
      .filter((language) => !pairs.some(({ key }) => key === language))
      .forEach((language) => missingText(here, language));
    return found;
  };
  return { read, blank: blanks };
}

const missingText = ({ file, name }: Here, language: string): void =>
  file.fault(
    'MISSING_TEXT',
    name,
    `The text in "${language}" is missing.`,
    `Write it: ${languages.map((each) => `${each}: ...`).join(', ')}.`,
  );

/** What a person reads, which no language may lack. */
export const text: Reader<Text> = inLanguages((here) => {
  if (isScalar(here.node) && String(here.node.value).trim() !== '') return String(here.node.value);
  if (isScalar(here.node)) missingText(here, textOfKey(here));
  else wrongShape(here, 'a text', 'Write the text after the colon.');
  return '';
}, '');

const textOfKey = ({ file, name }: Here): string => file.text.slice(name.from, name.to);

/** Words in each language, of which there may be none. */
export const wordLists: Reader<Readonly<Record<Language, readonly string[]>>> = inLanguages(
  list(plain, 'words').read,
  [],
);
