import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { FaultyContentError, contentFolder, openContent } from '#server/content.ts';
import { soundFolder } from '../content/fixtures.ts';

describe('content', () => {
  it('opens where everything is right', () => {
    expect([...openContent(soundFolder).methods.keys()]).toEqual(['tiny-wall']);
  });

  it('refuses to open where anything is wrong, with every fault and its place', () => {
    const folder = mkdtempSync(join(tmpdir(), 'underlap-'));
    cpSync(soundFolder, folder, { recursive: true });
    rmSync(join(folder, 'glossary/wall.yaml'));
    rmSync(join(folder, 'data-sheets/tiny.yaml'));
    const open = () => openContent(folder);
    expect(open).toThrow(FaultyContentError);
    expect(open).toThrow(/data-sheets\/changed\.yaml:2:11 UNKNOWN_DATA_SHEET/);
    expect(open).toThrow(/methods\/tiny-wall\.yaml:4:13 UNKNOWN_DATA_SHEET/);
  });

  it("finds the project's own folder from wherever it was started", () => {
    expect(contentFolder()).toBe(join(import.meta.dirname, '../../content'));
  });
});
