/** Real pictures, small ones, with everything in them that a camera may write besides. */
import { crc32, deflateSync } from 'node:zlib';

/** What must be nowhere in a kept photo. */
export const secrets = ['GPS-HERE', 'Camera Maker', 'a caption', '<x:xmpmeta', 'behind the end'];

const text = (value: string): Buffer => Buffer.from(value, 'latin1');
const be16 = (value: number): Buffer => Buffer.from([value >> 8, value & 255]);
const be32 = (value: number): Buffer => {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32BE(value);
  return bytes;
};
const le32 = (value: number): Buffer => be32(value).reverse();

/** A TIFF directory (Exif 2.3, 2010) with a maker's name, and one of GPS with a latitude and a place's name. */
export function exif(): Buffer {
  const entry = (tag: number, type: number, count: number, value: Buffer) =>
    Buffer.concat([be16(tag), be16(type), be32(count), value]);
  const maker = text('Camera Maker\0');
  const area = text('GPS-HERE\0');
  const latitude = Buffer.concat([40, 1, 41, 1, 25, 1].map(be32));
  const [first, gps] = [8, 8 + 2 + 2 * 12 + 4];
  const data = gps + 2 + 3 * 12 + 4;
  return Buffer.concat([
    text('MM'),
    be16(42),
    be32(first),
    be16(2),
    entry(0x010f, 2, maker.length, be32(data)),
    entry(0x8825, 4, 1, be32(gps)),
    be32(0),
    be16(3),
    entry(1, 2, 2, text('N\0\0\0')),
    entry(2, 5, 3, be32(data + maker.length)),
    entry(0x1c, 7, area.length, be32(data + maker.length + latitude.length)),
    be32(0),
    maker,
    latitude,
    area,
  ]);
}

const xmp = '<x:xmpmeta><exif:GPSLatitude>40,41.4N</exif:GPSLatitude></x:xmpmeta>';

export const segment = (marker: number, body: Buffer): Buffer =>
  Buffer.concat([Buffer.from([0xff, marker]), be16(body.length + 2), body]);

/**
 * A grey baseline JPEG of 8 x 8: one block, all of whose coefficients are 0. Each table of codes has one
 * code, `0`, for "no difference" and "end of block", so that its data are the two bits 00.
 */
export function jpeg({ notes = true, width = 8, height = 8 } = {}): Buffer {
  const oneCode = (kind: number) => Buffer.from([kind, 1, ...Array<number>(15).fill(0), 0]);
  const noted = [
    segment(0xe1, Buffer.concat([text('Exif\0\0'), exif()])),
    segment(0xe1, text(`http://ns.adobe.com/xap/1.0/\0${xmp}`)),
    segment(0xe2, text('ICC_PROFILE\0\x01\x01Camera Maker')),
    segment(0xed, text('Photoshop 3.0\0a caption')),
    segment(0xee, Buffer.concat([text('Adobe'), be16(100), be16(0), be16(0), Buffer.from([0])])),
    segment(0xfe, text('a caption')),
  ];
  return Buffer.concat([
    Buffer.from([0xff, 0xd8]),
    segment(0xe0, Buffer.concat([text('JFIF\0'), Buffer.from([1, 1, 0, 0, 1, 0, 1, 0, 0])])),
    ...(notes ? noted : []),
    segment(0xdb, Buffer.from([0, ...Array<number>(64).fill(1)])),
    segment(
      0xc0,
      Buffer.concat([Buffer.from([8]), be16(height), be16(width), Buffer.from([1, 1, 0x11, 0])]),
    ),
    segment(0xc4, oneCode(0x00)),
    segment(0xc4, oneCode(0x10)),
    segment(0xda, Buffer.from([1, 1, 0, 0, 63, 0])),
    Buffer.from([0x3f, 0xff, 0xd9]),
    ...(notes ? [text('behind the end')] : []),
  ]);
}

export function chunk(name: string, body: Buffer): Buffer {
  const named = Buffer.concat([text(name), body]);
  return Buffer.concat([be32(body.length), named, be32(crc32(named))]);
}

export function png({ notes = true, width = 2, height = 2 } = {}): Buffer {
  const rows = Buffer.from([0, 10, 200, 0, 200, 10]);
  const noted = [
    chunk('tEXt', text('Comment\0a caption')),
    chunk('zTXt', Buffer.concat([text('Comment\0\0'), deflateSync(text('a caption'))])),
    chunk('iTXt', text(`XML:com.adobe.xmp\0\0\0\0\0${xmp}`)),
    chunk('eXIf', exif()),
    chunk('tIME', Buffer.from([7, 0xea, 5, 1, 7, 30, 0])),
  ];
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', Buffer.concat([be32(width), be32(height), Buffer.from([8, 0, 0, 0, 0])])),
    chunk('gAMA', be32(45455)),
    ...(notes ? noted : []),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
    ...(notes ? [text('behind the end')] : []),
  ]);
}

const riffChunk = (name: string, body: Buffer): Buffer =>
  Buffer.concat([text(name), le32(body.length), body, Buffer.alloc(body.length % 2)]);

/** A WebP without loss, of one pixel. */
export function webp({ notes = true, moves = false } = {}): Buffer {
  const pixel = Buffer.from([
    0x2f, 0x00, 0x00, 0x00, 0x10, 0x07, 0x10, 0x11, 0x11, 0x88, 0x88, 0xfe, 0x07,
  ]);
  const header = Buffer.from([0x2c, 0, 0, 0, 0, 0, 0, 0, 0, 0]);
  const noted = [riffChunk('EXIF', exif()), riffChunk('XMP ', text(xmp))];
  const body = Buffer.concat([
    text('WEBP'),
    ...(notes ? [riffChunk('VP8X', header), riffChunk('ICCP', text('Camera Maker'))] : []),
    riffChunk('VP8L', pixel),
    ...(moves ? [riffChunk('ANMF', Buffer.alloc(24))] : []),
    ...(notes ? noted : []),
  ]);
  const whole = Buffer.concat([text('RIFF'), le32(body.length), body]);
  return notes ? Buffer.concat([whole, text('behind the end')]) : whole;
}
