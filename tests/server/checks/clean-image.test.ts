import { describe, expect, test } from 'vitest';
import { cleanImage } from '#server/checks/image/clean-image.ts';
import { chunk, exif, jpeg, png, secrets, segment, webp } from './pictures.ts';

function cleaned(bytes: Uint8Array) {
  const clean = cleanImage(bytes);
  if (!clean.ok) throw new Error(clean.error);
  return { ...clean.value, bytes: Buffer.from(clean.value.bytes) };
}

const makers = { jpeg, png, webp };

describe.each(Object.entries(makers))('%s', (_, make) => {
  test('nothing that a camera wrote besides is left, and the picture is', () => {
    const noted = make({ notes: true });
    const before = noted.toString('latin1');
    for (const secret of secrets) if (secret !== 'a caption') expect(before).toContain(secret);
    const after = cleaned(noted).bytes.toString('latin1');
    for (const secret of [...secrets, 'GPS', 'Exif', 'eXIf']) expect(after).not.toContain(secret);
  });

  test('cleaned twice it is the same', () => {
    const once = cleaned(make({ notes: true })).bytes;
    expect(cleaned(once).bytes.equals(once)).toBe(true);
  });

  test('cut short anywhere it is refused', () => {
    const whole = make({ notes: false });
    for (let length = 0; length < whole.length; length += 1) {
      expect(cleanImage(whole.subarray(0, length)).ok, `${length} bytes`).toBe(false);
    }
  });

  test('with any one byte changed it never throws', () => {
    const whole = make({ notes: true });
    for (let place = 0; place < whole.length; place += 1) {
      const changed = Buffer.from(whole);
      changed[place] = (changed[place]! + 1) & 255;
      expect(() => cleanImage(changed)).not.toThrow();
    }
  });
});

describe('jpeg', () => {
  test('what remains is what there was without the notes, and the Adobe marker', () => {
    const after = cleaned(jpeg()).bytes;
    const adobe = Buffer.from('Adobe', 'latin1');
    expect(after.includes(adobe)).toBe(true);
    const at = after.indexOf(adobe) - 4;
    const without = Buffer.concat([after.subarray(0, at), after.subarray(at + 16)]);
    expect(without.equals(jpeg({ notes: false }))).toBe(true);
  });

  test('the small picture in a JFIF marker is cut off', () => {
    const [small, plain] = [Buffer.from('a small picture of 3'), jpeg({ notes: false })];
    const header = Buffer.concat([
      Buffer.from('JFIF\0\x01\x01\0\0\x01\0\x01\x01\x01', 'latin1'),
      small,
    ]);
    const bytes = Buffer.concat([plain.subarray(0, 2), segment(0xe0, header), plain.subarray(20)]);
    expect(cleaned(bytes).bytes.equals(plain)).toBe(true);
  });

  test.each([
    ['without a scan', Buffer.from([0xff, 0xd8, 0xff, 0xd9])],
    ['a segment of no length', Buffer.from([0xff, 0xd8, 0xff, 0xe1, 0, 0, 0xff, 0xd9])],
    ['of no width', jpeg({ width: 0 })],
  ])('%s it is damaged', (_, bytes) => {
    expect(cleanImage(bytes)).toEqual({ ok: false, error: 'DAMAGED' });
  });
});

describe('png', () => {
  test('what remains is what there was without the notes', () => {
    expect(cleaned(png()).bytes.equals(png({ notes: false }))).toBe(true);
  });

  test('a part with a wrong checksum, or one that nobody knows and needs, is refused', () => {
    const plain = png({ notes: false });
    const wrong = Buffer.from(plain);
    wrong[20] = 9;
    expect(cleanImage(wrong)).toEqual({ ok: false, error: 'DAMAGED' });
    const strange = Buffer.concat([
      plain.subarray(0, 33),
      chunk('ABCD', exif()),
      plain.subarray(33),
    ]);
    expect(cleanImage(strange)).toEqual({ ok: false, error: 'DAMAGED' });
  });
});

describe('webp', () => {
  test('the flags that tell of notes are taken back with them', () => {
    const { bytes } = cleaned(webp());
    expect(bytes.readUInt32LE(4)).toBe(bytes.length - 8);
    expect(bytes[bytes.indexOf('VP8X') + 8]).toBe(0);
  });

  test('one that moves is refused', () => {
    expect(cleanImage(webp({ moves: true }))).toEqual({ ok: false, error: 'NOT_STILL' });
  });
});

describe('hostile files', () => {
  test.each([
    ['a small file of many pixels', png({ width: 50_000, height: 50_000 }), 'TOO_MANY_PIXELS'],
    ['one that is very long', jpeg({ width: 65_000, height: 8 }), 'TOO_MANY_PIXELS'],
    ['a page', Buffer.from('<html><script>alert(1)</script></html>'), 'UNKNOWN_KIND'],
    [
      'a drawing with a script',
      Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>'),
      'UNKNOWN_KIND',
    ],
    ['a document', Buffer.from('%PDF-1.7'), 'UNKNOWN_KIND'],
    ['a moving GIF', Buffer.from('GIF89a'), 'UNKNOWN_KIND'],
    ['nothing', Buffer.alloc(0), 'UNKNOWN_KIND'],
    ['a page that begins like a photo', Buffer.from('\xff\xd8\xff<html>', 'latin1'), 'DAMAGED'],
  ])('%s is refused', (_, bytes, code) => {
    expect(cleanImage(bytes)).toEqual({ ok: false, error: code });
  });

  test('a page hidden behind a picture does not come along', () => {
    const bytes = Buffer.concat([jpeg({ notes: false }), Buffer.from('<script>alert(1)</script>')]);
    expect(cleaned(bytes).bytes.equals(jpeg({ notes: false }))).toBe(true);
  });
});
