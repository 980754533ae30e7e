import { describe, expect, test } from 'vitest';
import { fromText, toText } from '#engine/compile/transport.ts';
import { askedOf, type AskedProblem } from '#engine/takeoff/asked.ts';
import type { Term } from '#engine/takeoff/formula.ts';
import { instanceOf, valueOf } from '#engine/takeoff/instance.ts';
import { writeAnswer } from '#engine/takeoff/problem.ts';
import { problemAnswerFrom, writtenIn } from '#engine/takeoff/problem-answer.ts';
import { echo, readAnswer } from '#engine/takeoff/read-answer.ts';
import { isSame } from '#engine/takeoff/slate.ts';
import { content, takeoff } from './shipped.ts';

const families = [...content.takeoffs.keys()];
const seeds = [1, 2, 3, 4, 5];

const partsIn = (term: Term): readonly string[] =>
  'args' in term ? term.args.flatMap(partsIn) : term.op === 'part' ? [term.name] : [];

const instanceBy = (family: string, seed: number) => {
  const made = instanceOf(takeoff(family), seed);
  if (!made.ok) throw new Error(made.error.code);
  return made.value;
};

describe('laws', () => {
  test.each(families)('%s: neither words nor picture are made from an answer', (family) => {
    const { family: known } = takeoff(family);
    const names = known.parts.map(({ id }) => id as string);
    const words = [known.intro, ...known.parts.map(({ ask }) => ask)];
    const named = words.flatMap(({ en, es }) =>
      [...`${en} ${es}`.matchAll(/\{([\w-]+)\}/g)].map(([, name]) => name!),
    );
    expect(named.filter((name) => names.includes(name))).toEqual([]);
    const plain = known.pictures.filter(
      ({ shows }) => [...shows.values()].flatMap(partsIn).length === 0,
    );
    const { pictures } = askedOf(instanceBy(family, 1)).stated;
    expect(pictures.map(({ kind }) => kind)).toEqual(plain.map(({ kind }) => kind));
    const computed = known.givens.flatMap(({ id, from }) =>
      from.kind === 'computed' || (from.kind === 'sheet' && from.at.size > 0) ? [id as string] : [],
    );
    const answered = known.parts.flatMap(({ term, id }) =>
      (known.givens as readonly { readonly term: Term }[]).some((given) => given.term === term)
        ? [id]
        : [],
    );
    expect([answered, named.filter((name) => computed.includes(name))]).toEqual([[], []]);
  });

  test.each(families)('%s: what is asked reads answers as the marking does', (family) => {
    for (const seed of seeds) {
      const instance = instanceBy(family, seed);
      const asked = fromText(toText(askedOf(instance))) as AskedProblem;
      expect(asked.parts.length).toBe(instance.parts.length);
      for (const [place, { part, right }] of instance.parts.entries()) {
        const text = writeAnswer(part.answer, right, 'es');
        const bare = readAnswer(asked.parts[place]!, text);
        const full = readAnswer(part, text);
        if (!bare.ok || !full.ok) throw new Error(`${part.id}: ${text}`);
        expect(isSame(valueOf(bare.value.value), valueOf(full.value.value))).toBe(true);
        expect(echo(asked.parts[place]!, bare.value).en).toBeTruthy();
      }
    }
  });

  test('a value that is no answer to a problem is none, and a stray unit is not picked', () => {
    const sound = { kind: 'problem', answers: [{ part: 'tape', text: '9 ft', picked: 'acre' }] };
    const read = problemAnswerFrom(sound);
    if (!read.ok) throw new Error(read.error);
    expect([...writtenIn(read.value, () => ['ft', 'in'])]).toEqual([['tape', { text: '9 ft' }]]);
    expect([...writtenIn(read.value, () => ['acre'])][0]![1]).toHaveProperty('picked', 'acre');
    const [one] = sound.answers;
    const odd: readonly unknown[] = [
      null,
      [],
      { kind: 'number', text: '9' },
      { kind: 'problem' },
      { kind: 'problem', answers: [{ part: 'tape' }] },
      { kind: 'problem', answers: [one, one] },
      { kind: 'problem', answers: [{ part: 'tape', text: 'x'.repeat(201) }] },
      { kind: 'problem', answers: Array(41).fill(one) },
    ];
    expect(odd.map((value) => problemAnswerFrom(value).ok)).toEqual(odd.map(() => false));
  });
});
