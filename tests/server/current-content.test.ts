import { cpSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { contentFolder, openContent } from '#server/content.ts';
import { openQuickly } from '#server/current-content.ts';

const freshBuild = (stamp: string) => {
  const build = mkdtempSync(join(tmpdir(), 'underlap-build-'));
  writeFileSync(join(build, '.built-from'), stamp);
  return build;
};

describe('truth', () => {
  test('content read from what was compiled before is the same, in every part', async () => {
    const compiled = openContent();
    const build = freshBuild('one');
    const file = join(build, 'content.compiled');
    expect(await openQuickly(build, contentFolder())).toEqual(compiled);
    const kept = readFileSync(file, 'utf8');
    expect(await openQuickly(build, contentFolder())).toEqual(compiled);
    expect(readFileSync(file, 'utf8')).toBe(kept);
  });

  test('another build, a changed file and a spoilt copy are compiled anew', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'underlap-content-'));
    cpSync(contentFolder(), folder, { recursive: true });
    const build = freshBuild('one');
    const file = join(build, 'content.compiled');
    const { revision } = await openQuickly(build, folder);
    const first = readFileSync(file, 'utf8');

    writeFileSync(join(build, '.built-from'), 'two');
    await openQuickly(build, folder);
    expect(readFileSync(file, 'utf8')).not.toBe(first);

    const sources = join(folder, 'sources.yaml');
    writeFileSync(sources, readFileSync(sources, 'utf8').replace(/title: (\w)/, 'title: X$1'));
    expect((await openQuickly(build, folder)).revision).not.toBe(revision);

    writeFileSync(file, readFileSync(file, 'utf8').slice(0, -100));
    expect((await openQuickly(build, folder)).methods.size).toBe(openContent().methods.size);
  });

  test('without a build it is compiled, and nothing is written', async () => {
    const none = join(tmpdir(), 'underlap-no-build');
    expect((await openQuickly(none, contentFolder())).revision).toBe(openContent().revision);
  });
});
