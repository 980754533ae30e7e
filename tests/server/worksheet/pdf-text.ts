import { inflateSync } from 'node:zlib';

const windows = new TextDecoder('windows-1252');

/** The content of every stream of a PDF that this project makes, unpacked, in the order of the file. */
export function streamsOf(pdf: Buffer): readonly string[] {
  const streams: string[] = [];
  for (let at = 0; (at = pdf.indexOf('stream\n', at)) >= 0; at += 1) {
    if (pdf.subarray(at - 3, at).toString() === 'end') continue;
    const end = pdf.indexOf('\nendstream', at);
    const packed = pdf.subarray(at + 'stream\n'.length, end);
    streams.push(packed[0] === 0x78 ? inflateSync(packed).toString('latin1') : '');
  }
  return streams;
}

/** What is written in a stream, a line for each piece of text. */
export const textOf = (stream: string): string =>
  [...stream.matchAll(/\[((?:<[0-9a-f]*>|[-\d. ])*)\] TJ/g)]
    .map(([, pieces = '']) =>
      [...pieces.matchAll(/<([0-9a-f]*)>/g)]
        .map(([, hex = '']) => windows.decode(Buffer.from(hex, 'hex')))
        .join(''),
    )
    .join('\n');
