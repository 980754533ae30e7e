import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compile } from '#engine/compile/compile.ts';
import type { ContentFile } from '#engine/compile/files.ts';
import type { DataSheetId, MethodId, NumberId } from '#engine/method/method.ts';
import { readContentFiles } from '#server/content.ts';
import { soundFolder } from '../../content/fixtures.ts';

const sound = readContentFiles(soundFolder);

const change = (path: string, from: string, to: string): readonly ContentFile[] =>
  sound.map((file) =>
    file.path === path ? { path, text: file.text.replace(from, () => to) } : file,
  );

const codesOf = (files: readonly ContentFile[]): readonly string[] =>
  compile(files).diagnostics.map(({ code }) => code);

describe('truth', () => {
  it('a sheet that starts from another keeps what it does not write again', () => {
    const { dataSheets } = compile(sound).content;
    const tiny = dataSheets.get('tiny' as DataSheetId)?.numbers;
    const changed = dataSheets.get('changed' as DataSheetId)?.numbers;
    const height = changed?.get('height' as NumberId);
    expect(height?.rule).not.toEqual(tiny?.get('height' as NumberId)?.rule);
    expect(height?.source).toBe('common-practice');
    expect(height?.name).toEqual(tiny?.get('height' as NumberId)?.name);
    expect(height?.entry).toEqual(tiny?.get('height' as NumberId)?.entry);
    expect(changed?.get('dry-time' as NumberId)).toEqual(tiny?.get('dry-time' as NumberId));
  });

  it('all faults of a file are found at once, and none of them brings others with it', () => {
    const path = 'methods/tiny-wall.yaml';
    const text = sound
      .find((file) => file.path === path)!
      .text.replace('assembly: wall-base', 'assembly: wallbase')
      .replace('severity: critical', 'severity: bad')
      .replace('takes: 4 min', 'takes: 4 minutos largos')
      .replace('step: prime', 'step: primed')
      .replace('layer: membrane', 'layer: membran')
      .replace('from: behind', 'from: behnd');
    const files = sound.map((file) => (file.path === path ? { path, text } : file));
    expect(codesOf(files)).toEqual([
      'UNKNOWN_ASSEMBLY',
      'UNKNOWN_SEVERITY',
      'BAD_QUANTITY',
      'UNKNOWN_STEP',
      'UNKNOWN_LAYER',
      'UNKNOWN_PLACE',
    ]);
  });

  it('a file that is no YAML is silent about what names its entries', () => {
    expect(codesOf(change('sources.yaml', 'read: seen', 'read: [seen'))).toEqual(
      expect.arrayContaining(['YAML_SYNTAX']),
    );
    expect(new Set(codesOf(change('sources.yaml', 'read: seen', 'read: [seen')))).toEqual(
      new Set(['YAML_SYNTAX']),
    );
    expect(new Set(codesOf(change('data-sheets/tiny.yaml', 'numbers:', 'numbers: [')))).toEqual(
      new Set(['YAML_SYNTAX']),
    );
  });

  it('content leaves out a file with a fault, and what names it', () => {
    const sheet = compile(change('data-sheets/tiny.yaml', 'at-least: 8 in', 'at-least: 8')).content;
    expect(sheet.dataSheets.size).toBe(0);
    expect(sheet.methods.size).toBe(0);
    expect(sheet.glossary.size).toBe(1);
    const method = compile(change('methods/tiny-wall.yaml', 'takes: 4 min', 'takes: 4')).content;
    expect(method.dataSheets.size).toBe(2);
    expect(method.methods.size).toBe(0);
  });

  it('steps, settings and joints keep the order in which they are written', () => {
    const method = compile(sound).content.methods.get('tiny-wall' as MethodId);
    expect(method?.steps.map(({ id }) => id)).toEqual(['prime', 'set-edge', 'hang']);
    expect(method?.water.joints.map(({ id }) => id)).toEqual(['top', 'face', 'wall']);
  });
});

describe('laws', () => {
  const revisions = (files: readonly ContentFile[]): Readonly<Record<string, string>> => {
    const { revision, sheetRevisions } = compile(files).content;
    return { revision, ...Object.fromEntries(sheetRevisions) };
  };

  it('the order of the files, their line ends and a byte order mark change nothing', () => {
    const written = sound.map(({ path, text }) => ({
      path,
      text: `\uFEFF${text.replaceAll('\n', '\r\n')}`,
    }));
    expect(compile(written.toReversed())).toEqual(compile(sound));
    const broken = change('methods/tiny-wall.yaml', 'takes: 4 min', 'takes: 4');
    const brokenToo = broken.map(({ path, text }) => ({
      path,
      text: text.replaceAll('\n', '\r\n'),
    }));
    expect(compile(brokenToo).diagnostics).toEqual(compile(broken).diagnostics);
  });

  it('a word anywhere changes the revision, and only in a sheet or its base that of the sheet', () => {
    const before = revisions(sound);
    const method = revisions(change('methods/tiny-wall.yaml', 'A tiny wall', 'A small wall'));
    expect(method.revision).not.toBe(before.revision);
    expect({ ...method, revision: '' }).toEqual({ ...before, revision: '' });
    const base = revisions(change('data-sheets/tiny.yaml', 'at-least: 8 in', 'at-least: 7 in'));
    expect(base.tiny).not.toBe(before.tiny);
    expect(base.changed).not.toBe(before.changed);
    const derived = revisions(change('data-sheets/changed.yaml', '10 in', '11 in'));
    expect(derived.tiny).toBe(before.tiny);
    expect(derived.changed).not.toBe(before.changed);
  });

  it(
    'whatever is written, it compiles or says at places that exist what is wrong',
    { timeout: 60_000 },
    () => {
      const scrap = fc.oneof(
        fc.constantFrom(
          '',
          ':',
          '- ',
          '[',
          '{',
          '}',
          "'",
          '"',
          '&a ',
          '*a',
          '!',
          '#',
          '\n',
          '\t',
          '?',
        ),
        fc.constantFrom('8 in', 'null', '~', '<<: ', '__proto__: ', 'constructor: ', 'steps: '),
        fc.string({ maxLength: 6 }),
      );
      fc.assert(
        fc.property(
          fc.nat(sound.length - 1),
          fc.array(fc.tuple(fc.nat(4000), fc.nat(30), scrap), { minLength: 1, maxLength: 3 }),
          (which, edits) => {
            const { path, text } = sound[which]!;
            const edited = edits.reduce((now, [at, length, put]) => {
              const from = at % (now.length + 1);
              return now.slice(0, from) + put + now.slice(from + length);
            }, text);
            const files = sound.map((file, index) =>
              index === which ? { path, text: edited } : file,
            );
            for (const { file, line, column, length, sourceLine } of compile(files).diagnostics) {
              const read = files.find((each) => each.path === file)!.text.replace(/^\uFEFF/, '');
              expect(read.split(/\r\n|\r|\n/)[line - 1]).toBe(sourceLine);
              expect(column).toBeGreaterThanOrEqual(1);
              expect(column).toBeLessThanOrEqual(sourceLine.length + 1);
              expect(length).toBeGreaterThanOrEqual(1);
            }
          },
        ),
        { numRuns: 100 },
      );
    },
  );
});
