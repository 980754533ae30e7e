/**
 * The words on a document that Chromium printed: each text is drawn by numbers of letters within a font, and
 * each font carries the table that reads them back (`ToUnicode`, ISO 32000-1, 9.10.3).
 */
import { inflateSync } from 'node:zlib';

type Parts = ReadonlyMap<string, string>;

/** Every object by its number; a packed stream follows its dictionary unpacked. */
function objectsOf(pdf: Buffer): Parts {
  const text = pdf.toString('latin1');
  const objects = [...text.matchAll(/(?:^|\n)(\d+) 0 obj\s/g)].map((found): [string, string] => {
    const start = found.index + found[0].length;
    const end = text.indexOf('endobj', start);
    const body = text.slice(start, end);
    const [head = '', packed] = body.split(/stream\r?\n/, 2);
    if (packed === undefined || !head.includes('/FlateDecode')) return [found[1] ?? '', body];
    const bytes = Buffer.from(body.slice(head.length).replace(/^stream\r?\n/, ''), 'latin1');
    return [found[1] ?? '', head + inflateSync(bytes).toString('latin1')];
  });
  return new Map(objects);
}

const letters = (hex: string): string =>
  (hex.match(/.{4}/g) ?? []).map((unit) => String.fromCharCode(parseInt(unit, 16))).join('');

/** From the number of a letter, as it is drawn, to what it reads. */
function tableOf(map: string): Parts {
  const table = new Map<string, string>();
  const runs = [...map.matchAll(/<(\w{4})> <(\w{4})> <(\w+)>/g)];
  for (const [, from = '', to = '', first = ''] of runs) {
    for (let number = parseInt(from, 16); number <= parseInt(to, 16); number += 1) {
      const code = parseInt(first, 16) + number - parseInt(from, 16);
      table.set(hexOf(number), letters(code.toString(16).padStart(4, '0')));
    }
  }
  const single = map.replaceAll(/<\w{4}> <\w{4}> <\w+>/g, '');
  for (const [, number = '', reads = ''] of single.matchAll(/<(\w{4})> <(\w+)>/g)) {
    table.set(number.toLowerCase(), letters(reads));
  }
  return table;
}

const hexOf = (number: number): string => number.toString(16).padStart(4, '0');

export function printedText(pdf: Buffer): string {
  const objects = objectsOf(pdf);
  const pages = [...objects.values()].filter((body) => /\/Type\s*\/Page\b/.test(body));
  return pages.map((page) => textOf(page, objects)).join('\n');
}

function textOf(page: string, objects: Parts): string {
  const fonts = new Map(
    [...page.matchAll(/\/(F\d+) (\d+) 0 R/g)].map(([, name = '', at = '']) => {
      const map = /\/ToUnicode (\d+) 0 R/.exec(objects.get(at) ?? '')?.[1] ?? '';
      return [name, tableOf(objects.get(map) ?? '')] as const;
    }),
  );
  const drawn = objects.get(/\/Contents (\d+) 0 R/.exec(page)?.[1] ?? '') ?? '';
  let font: Parts = new Map();
  let text = '';
  for (const [, name, pieces] of drawn.matchAll(
    /\/(F\d+) [\d.]+ Tf|((?:<\w+>|\[[^\]]*\])) T[jJ]/g,
  )) {
    if (name !== undefined) font = fonts.get(name) ?? new Map();
    const hex = [...(pieces ?? '').matchAll(/<(\w+)>/g)].map(([, part = '']) => part).join('');
    text += (hex.toLowerCase().match(/.{4}/g) ?? []).map((each) => font.get(each) ?? '').join('');
  }
  return text;
}
