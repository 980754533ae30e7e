/** What is made from every shipped wall, proven against an order that is closed anew here. */
import { describe, expect, it } from 'vitest';
import { allSites } from '#engine/method/site.ts';
import { compare } from '#engine/measure/arithmetic.ts';
import { parseQuantity } from '#engine/measure/parse-quantity.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { judge } from '#engine/method/rule.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import { languages, type Text } from '#engine/text.ts';
import { hiddenWall } from '#engine/written/hidden-wall.ts';
import { keyTo } from '#engine/written/key.ts';
import {
  type MadeKind,
  madeKinds,
  madeQuestion,
  madeQuestions,
  sameness,
} from '#engine/written/made/made-question.ts';
import { markAnswer } from '#engine/written/mark-answer.ts';
import { posed } from '#engine/written/posed.ts';
import type { ChooseOne, Question } from '#engine/written/question.ts';
import { readsAs } from '#engine/written/reads-as.ts';
import { content, walls } from '../../content/walls.ts';

const patterns = content.patterns!;
const seeds = Array.from({ length: 6 }, (_, seed) => seed);

const madeOn = (sequence: Sequence, kind: MadeKind): readonly Question[] =>
  seeds.flatMap((seed) => madeQuestion({ sequence, patterns }, kind, seed) ?? []);

const chosen = (sequence: Sequence, kind: MadeKind): readonly ChooseOne[] =>
  madeOn(sequence, kind).filter((one): one is ChooseOne => one.kind === 'choose-one');

/** Whether one step must come before another: closed by S. Warshall's way, not as the engine does. */
function closed({ steps, constraints }: Sequence): readonly (readonly boolean[])[] {
  const before = steps.map(() => steps.map(() => false));
  for (const one of constraints) before[one.before]![one.after] = true;
  for (const k of steps.keys())
    for (const i of steps.keys())
      for (const j of steps.keys()) if (before[i]![k] && before[k]![j]) before[i]![j] = true;
  return before;
}

const placeSaying = ({ steps }: Sequence, say: Text): number => {
  const places = [...steps.keys()].filter((place) => steps[place]!.say.en === say.en);
  expect(places.length, say.en).toBeLessThan(2);
  return places[0] ?? -1;
};

const stepOf = ({ steps }: Sequence, { of }: Question): number =>
  steps.findIndex(({ id }) => id === of[0]!.step);

const plain = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

const words = (text: string): readonly string[] =>
  (plain(text).match(/\p{L}{5,}/gu) ?? []).map((word) => word.slice(0, 5));

const firstWord = (text: string): string | undefined => plain(text).match(/\p{L}+/u)?.[0];

const choicesOf = (question: ChooseOne): readonly Text[] => [
  question.right,
  ...question.wrong.map(({ say }) => say),
];

describe('laws', () => {
  it.each(walls)('what comes before is bound so, and no other choice is: $name', ({ sequence }) => {
    const before = closed(sequence);
    const made = chosen(sequence, 'before');
    expect(made.length).toBe(seeds.length);
    for (const question of made) {
      const step = stepOf(sequence, question);
      expect(before[placeSaying(sequence, question.right)]![step]).toBe(true);
      for (const { say } of question.wrong) {
        const place = placeSaying(sequence, say);
        expect(place).toBeGreaterThanOrEqual(0);
        expect(before[place]![step], say.en).toBe(false);
        expect(place).not.toBe(step);
      }
    }
  });

  it.each(walls)('a reason is that of its step, and the others are of others: $name', (wall) => {
    const { sequence } = wall;
    const made = chosen(sequence, 'reason');
    expect(made.length).toBe(seeds.length);
    for (const question of made) {
      const step = sequence.steps[stepOf(sequence, question)]!;
      expect(question.right).toEqual(step.reason);
      for (const { say } of question.wrong) {
        const owners = sequence.steps.filter(({ reason }) => reason.en === say.en);
        expect(owners.length).toBeGreaterThan(0);
        expect(owners.map(({ id }) => id)).not.toContain(step.id);
      }
    }
  });

  it.each(walls)(
    'a key point is one of its step, and no other could be taken for one: $name',
    (wall) => {
      const { steps } = wall.sequence;
      const made = chosen(wall.sequence, 'key-point');
      expect(made.length).toBe(seeds.length);
      for (const question of made) {
        const step = steps[stepOf(wall.sequence, question)]!;
        expect(step.keyPoints).toContainEqual(question.right);
        const own = [step.say, step.reason, ...step.keyPoints];
        for (const { say, because } of question.wrong) {
          const owners = steps.filter(({ keyPoints }) => keyPoints.some(({ en }) => en === say.en));
          const told = owners.filter((owner) => because.en.includes(`“${owner.say.en}”`));
          expect(told.length, because.en).toBe(1);
          expect(owners.map(({ id }) => id)).not.toContain(step.id);
          for (const language of languages) {
            // No word of five letters or more begins as one does that is said of the step.
            const beginnings = words(own.map((text) => text[language]).join(' '));
            const shared = words(say[language]).filter((word) => beginnings.includes(word));
            expect(shared, say[language]).toEqual([]);
            expect(firstWord(told[0]!.say[language])).not.toBe(firstWord(step.say[language]));
          }
          const layers = step.draws.map(({ layer }) => layer);
          expect(told[0]!.draws.filter(({ layer }) => layers.includes(layer))).toEqual([]);
          const dangers = told[0]!.hazards.filter((hazard) => step.hazards.includes(hazard));
          for (const danger of dangers) {
            const met = steps.filter(({ hazards }) => hazards.includes(danger)).length;
            expect(met, danger).toBeGreaterThan(steps.length / 2);
          }
        }
      }
    },
  );

  it.each(walls)('a value is the only one of its choices that is asked for: $name', (wall) => {
    const { sequence } = wall;
    const made = chosen(sequence, 'value');
    expect(made.length).toBe(seeds.length);
    for (const question of made) {
      const { asks } = sequence.steps[stepOf(sequence, question)]!;
      const ask = asks.find((one) => question.ask.en.includes(one.ask.en))!;
      const { rule } = ask;
      const isSought = (value: Quantity): boolean =>
        rule.kind === 'at-least' || rule.kind === 'at-most'
          ? compare(value, rule.value) === 0
          : judge(rule, value).within;
      const found = choicesOf(question).map((say) => {
        const read = parseQuantity(say.en, ask.sheetNumber.dimension);
        if (!read.ok) throw new Error(say.en);
        return isSought(read.value);
      });
      expect(found, question.ask.en).toEqual([true, ...question.wrong.map(() => false)]);
    }
  });

  it.each(walls)('a time to dry is the least, and the others are not: $name', ({ sequence }) => {
    for (const question of chosen(sequence, 'wait')) {
      const { dries } = sequence.steps[stepOf(sequence, question)]!;
      const found = choicesOf(question).map((say) => {
        const read = parseQuantity(say.en, 'time');
        return read.ok && compare(read.value, dries!.least) === 0;
      });
      expect(found).toEqual([true, ...question.wrong.map(() => false)]);
    }
  });

  it.each(walls)('what is missing is not in the list, and must lie within it: $name', (wall) => {
    const { sequence } = wall;
    const before = closed(sequence);
    const made = chosen(sequence, 'missing');
    expect(made.length).toBe(seeds.length);
    for (const question of made) {
      const gap = placeSaying(sequence, question.right);
      const isTold = (say: Text): boolean => question.ask.en.includes(`. ${say.en}`);
      const told = [...sequence.steps.keys()].filter((place) => isTold(sequence.steps[place]!.say));
      expect(told).not.toContain(gap);
      expect(told.some((place) => before[place]![gap])).toBe(true);
      expect(told.some((place) => before[gap]![place])).toBe(true);
      for (const { say } of question.wrong) {
        const place = placeSaying(sequence, say);
        expect(place < 0 || told.includes(place), say.en).toBe(true);
      }
    }
  });

  it.each(walls)('steps to put in order have one order: $name', ({ sequence }) => {
    const before = closed(sequence);
    const made = madeOn(sequence, 'order');
    expect(made.length).toBe(seeds.length);
    for (const question of made) {
      if (question.kind !== 'order') throw new Error(question.kind);
      const places = question.steps.map((say) => placeSaying(sequence, say));
      expect(places.length).toBeGreaterThanOrEqual(3);
      places.forEach((place, index) => {
        for (const later of places.slice(index + 1)) expect(before[place]![later]).toBe(true);
      });
    }
  });

  it.each(walls)('a hidden fault is the one fault of its wall: $name', ({ sequence }) => {
    const made = madeOn(sequence, 'find-fault');
    expect(made.length).toBe(seeds.length);
    for (const question of made) {
      if (question.kind !== 'find-fault') throw new Error(question.kind);
      const wall = hiddenWall(question, content)!;
      expect(wall.faults.map(({ kind }) => kind)).toEqual([question.fault.kind]);
      const { zones, kind } = wall.faults[0]!;
      const answer = { kind: 'find-fault', zone: zones[0]!, fault: kind } as const;
      expect(markAnswer(question, answer, content).outcome).toBe('right');
    }
  });

  it.each(walls)('no two choices read alike, and all is said in both languages: $name', (wall) => {
    for (const kind of madeKinds) {
      for (const question of madeOn(wall.sequence, kind)) {
        const says =
          question.kind === 'choose-one'
            ? choicesOf(question)
            : question.kind === 'order'
              ? question.steps
              : [];
        for (const language of languages) {
          expect(new Set(says.map((say) => readsAs(say[language]))).size).toBe(says.length);
          const texts = JSON.stringify(question, (_, value: unknown) =>
            typeof value === 'bigint' ? String(value) : value,
          );
          expect(texts).not.toMatch(/undefined|\{[a-z][a-z-]*\}|"(en|es)":""/);
          expect(question.point[language]).toMatch(/\S/);
        }
        expect(content.sources.has(question.source)).toBe(true);
      }
    }
  });

  it('the answer of its key is marked right, and each wrong choice with its own reason', () => {
    for (const { sequence } of walls.filter((_, index) => index % 12 === 0)) {
      for (const question of madeQuestions({ sequence, patterns }, 'key', 12)) {
        const key = keyTo(question, content)!;
        if (key.kind === 'choose-one') {
          const take = (choice: typeof key.right) =>
            markAnswer(question, { kind: 'choose-one', choice }, content);
          expect(take(key.right).outcome).toBe('right');
          for (const { choice, because } of key.reasons) {
            expect(take(choice!)).toMatchObject({ outcome: 'wrong', because });
          }
        }
        if (key.kind === 'order') {
          const answer = { kind: 'order', steps: key.right } as const;
          expect(markAnswer(question, answer, content).outcome).toBe('right');
        }
      }
    }
  });

  it('the same seed makes the same, and none twice in one draw', () => {
    const { sequence } = walls[0]!;
    const made = madeQuestions({ sequence, patterns }, 5, 20);
    expect(madeQuestions({ sequence, patterns }, 5, 20)).toEqual(made);
    expect(made.length).toBe(20);
    expect(new Set(made.map(sameness)).size).toBe(20);
    expect(new Set(made.map(({ id }) => id)).size).toBe(20);
    for (const one of made) expect(posed(one, 1, content)).toBeDefined();
  });
});

describe('no-regression', () => {
  it('knows how many walls have questions of each kind', () => {
    const counts = Object.fromEntries(
      madeKinds.map((kind) => [
        kind,
        walls.filter(({ sequence }) => madeQuestion({ sequence, patterns }, kind, 0)).length,
      ]),
    );
    const sites = [...content.methods.values()].reduce(
      (sum, { site }) => sum + allSites(site).length,
      0,
    );
    expect(walls.length).toBe(sites);
    expect(counts).toEqual({
      before: 144,
      reason: 144,
      'key-point': 144,
      value: 144,
      wait: 80,
      missing: 144,
      order: 144,
      'find-fault': 144,
    });
  });
});
