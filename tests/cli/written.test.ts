import { describe, expect, it } from 'vitest';
import { run } from '../../src/cli/run.ts';
import { soundFolder } from '../content/fixtures.ts';

type Shown = {
  readonly id: string;
  readonly posed: { readonly kind: string; readonly choices?: readonly { readonly key: string }[] };
  readonly key: { readonly kind: string; readonly right?: unknown };
};

const underlap = async (...args: readonly string[]) => {
  let out = '';
  let beside = '';
  const code = await run(['written', ...args, '--content', soundFolder], {
    out: (text) => (out += text),
    beside: (text) => (beside += text),
  });
  return { code, out, beside };
};

const shown = async (...args: readonly string[]) =>
  JSON.parse((await underlap(...args)).out) as readonly Shown[];

describe('underlap written', () => {
  it('writes the questions of a topic, each with its key beside it', async () => {
    const all = await shown('tiny', '--seed', '7', '--count', '20');
    expect(all.map(({ posed }) => posed.kind).toSorted()).toEqual([
      'choose-all',
      'choose-one',
      'find-fault',
      'number',
      'number',
      'order',
    ]);
    for (const { posed, key } of all) {
      expect(key.kind).toBe(posed.kind);
      if (key.kind === 'choose-one') {
        expect(posed.choices!.map((choice) => choice.key)).toContain(key.right);
      }
    }
  });

  it('the same seed writes the same, of a topic or of all', async () => {
    expect(await shown('--seed', '3', '--count', '4')).toEqual(
      await shown('tiny', '--seed', '3', '--count', '4'),
    );
    expect(await shown('--seed', '3')).toHaveLength(1);
  });

  it('makes questions from a method on one wall', async () => {
    const made = await shown(
      '--made',
      'tiny-wall',
      '--site',
      'edge=drip',
      '--seed',
      '1',
      '--count',
      '2',
    );
    expect(made.length).toBeGreaterThan(0);
    for (const { id, posed } of made) {
      expect(id).toMatch(/^made-/);
      expect(posed).toBeDefined();
    }
  });

  it.each([
    [['tiny'], 'Give a seed'],
    [['tiny', 'other', '--seed', '1'], 'Name one topic'],
    [['nothing', '--seed', '1'], 'There is no topic "nothing"'],
    [['tiny', '--seed', '1', '--count', '0'], '--count takes'],
    [['--made', 'nothing', '--seed', '1'], 'nothing'],
    [['tiny', '--made', 'tiny-wall', '--seed', '1'], 'Name a topic, or a method'],
  ])('misuse: %j', async (args, said) => {
    const { code, beside } = await underlap(...args);
    expect(code).toBe(2);
    expect(beside).toContain(said);
  });
});
