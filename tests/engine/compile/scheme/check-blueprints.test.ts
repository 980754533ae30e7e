import { describe, expect, test } from 'vitest';
import { readFiles } from '#engine/compile/read-files.ts';
import { checkBlueprints } from '#engine/compile/scheme/check-blueprints.ts';
import { readContentFiles } from '#server/content.ts';
import { soundFolder } from '../../../content/fixtures.ts';

/** The faults of the small content's schemes where the bank holds so many questions of each topic. */
function faultsWith(topics: Readonly<Record<string, number>>, knowledge = '{ tiny: 1 }') {
  const files = readContentFiles(soundFolder).map((file) => ({
    ...file,
    text: file.text.replace('blueprint: { tiny: 1 }', `blueprint: ${knowledge}`),
  }));
  const { schemes } = readFiles(files);
  checkBlueprints(schemes.values(), new Map(Object.entries(topics)));
  return [...schemes.values()].flatMap(({ file }) =>
    file.faults.map(({ code, line, column, length, cure }) => ({
      code,
      line,
      column,
      length,
      cure,
    })),
  );
}

describe('truth', () => {
  test('a blueprint may ask for all that a topic has', () => {
    expect(faultsWith({ tiny: 2 }, '{ tiny: 2 }')).toEqual([]);
  });

  test('it may not ask for more, and the number is pointed at', () => {
    expect(faultsWith({ tiny: 1 }, '{ tiny: 2 }')).toEqual([
      {
        code: 'ASKS_TOO_MUCH',
        line: 14,
        column: 24,
        length: 1,
        cure: 'Ask for fewer, or write more questions.',
      },
    ]);
  });

  test('a topic that is not there is pointed at, with the one that was meant', () => {
    expect(faultsWith({ tiny: 1 }, '{ tinny: 1 }')).toEqual([
      {
        code: 'UNKNOWN_TOPIC',
        line: 14,
        column: 18,
        length: 5,
        cure: 'Write "tiny", if that was meant.',
      },
    ]);
  });

  test('the blueprint of a renewal is asked the same', () => {
    const found = faultsWith({ other: 1 });
    expect(found.map(({ code, line }) => [code, line])).toEqual([
      ['UNKNOWN_TOPIC', 14],
      ['UNKNOWN_TOPIC', 53],
    ]);
  });

  test('of an empty bank nothing is said', () => {
    expect(faultsWith({})).toEqual([]);
  });
});
