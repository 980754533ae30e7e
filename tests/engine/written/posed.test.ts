import { describe, expect, it } from 'vitest';
import { attemptFrom } from '#engine/marking/attempt-from.ts';
import { review } from '#engine/marking/review.ts';
import type { Text } from '#engine/text.ts';
import { keyTo } from '#engine/written/key.ts';
import { posed } from '#engine/written/posed.ts';
import type { ChooseAll, ChooseOne, Question } from '#engine/written/question.ts';
import { content } from '../../content/walls.ts';
import { onChangedSheet, question, sound } from './asked.ts';

const shipped = [...content.topics.values()].flatMap(({ questions }) => questions);
const all: readonly (readonly [Question, typeof content])[] = [
  ...[...sound.topics.values()].flatMap(({ questions }) =>
    questions.map((one) => [one, sound] as const),
  ),
  ...shipped.map((one) => [one, content] as const),
];
const seeds = ['a', 'b', 'c', 7];

/** The same question, with the first wrong choice in the right one's place. */
const exchanged = (asked: ChooseOne): ChooseOne => {
  const [first, ...others] = asked.wrong;
  return {
    ...asked,
    right: first!.say,
    wrong: [...others, { say: asked.right, because: first!.because }],
  };
};

/** The same texts, all but the last of them right. */
const nearlyAllRight = (asked: ChooseAll): ChooseAll => {
  const says: readonly Text[] = [...asked.right, ...asked.wrong.map(({ say }) => say)];
  const because = asked.wrong[0]!.because;
  return {
    ...asked,
    right: says.slice(0, -1),
    wrong: says.slice(-1).map((say) => ({ say, because })),
  };
};

describe('truth', () => {
  it('the same seed poses the same, and another seed another order', () => {
    const asked = question('first-of-all', 'choose-one');
    expect(posed(asked, 7, sound)).toEqual(posed(asked, '7', sound));
    const orders = new Set(
      Array.from({ length: 40 }, (_, seed) => JSON.stringify(posed(asked, seed, sound))),
    );
    expect(orders.size).toBe(6);
  });

  it('the numbers of the sheet stand in the texts', () => {
    const asked = question('keeps-water-out', 'choose-all');
    const shown = posed(asked, 1, sound);
    expect(shown && 'choices' in shown && shown.choices.map(({ say }) => say.es)).toContain(
      'Una vuelta de 8 pulg',
    );
  });

  it('a wrong choice that reads like the right one on a changed sheet is not shown', () => {
    const asked: ChooseOne = {
      ...question('first-of-all', 'choose-one'),
      right: { en: '{height}', es: '{height}' },
      wrong: ['10 in', '2 in', '3 in'].map((say) => ({
        say: { en: say, es: say },
        because: { en: 'No.', es: 'No.' },
      })),
    };
    const shown = (shelf: typeof sound) => {
      const found = posed(asked, 1, shelf);
      return found && 'choices' in found ? found.choices.map(({ say }) => say.en).sort() : [];
    };
    expect(shown(sound)).toEqual(['10 in', '2 in', '3 in', '8 in']);
    expect(shown(onChangedSheet)).toEqual(['10 in', '2 in', '3 in']);
  });

  it('a question whose wrong choices are all gone is not asked', () => {
    const asked: ChooseOne = {
      ...question('first-of-all', 'choose-one'),
      right: { en: '{height}', es: '{height}' },
      wrong: [{ say: { en: '10 in', es: '10 pulg' }, because: { en: 'No.', es: 'No.' } }],
    };
    expect(posed(asked, 1, sound)).toBeDefined();
    expect(posed(asked, 1, onChangedSheet)).toBeUndefined();
    expect(keyTo(asked, onChangedSheet)).toBeUndefined();
  });
});

describe('laws: what is posed says nothing of what is right', () => {
  const of = <K extends Question['kind']>(kind: K) =>
    all.filter(
      (one): one is [Extract<Question, { kind: K }>, typeof content] => one[0].kind === kind,
    );

  it('it is the same where a wrong choice is made the right one', () => {
    for (const [asked, shelf] of of('choose-one')) {
      for (const seed of seeds) {
        const shown = JSON.stringify(posed(asked, seed, shelf));
        expect(JSON.stringify(posed(exchanged(asked), seed, shelf))).toBe(shown);
      }
    }
  });

  it('it is the same however many of the choices are right', () => {
    for (const [asked, shelf] of of('choose-all')) {
      for (const seed of seeds) {
        const shown = JSON.stringify(posed(asked, seed, shelf));
        expect(JSON.stringify(posed(nearlyAllRight(asked), seed, shelf))).toBe(shown);
      }
    }
  });

  it('it is the same in whichever order the steps are right', () => {
    for (const [asked, shelf] of of('order')) {
      for (const seed of seeds) {
        const other = { ...asked, steps: asked.steps.toReversed() };
        expect(posed(other, seed, shelf)).toEqual(posed(asked, seed, shelf));
      }
    }
  });

  it('it is the same whatever number is right, and whichever answers are known as slips', () => {
    for (const [asked, shelf] of of('number')) {
      const value = asked.slips[0]?.answer;
      if (!value) continue;
      const other: Question = {
        ...asked,
        slips: [],
        answer: { kind: 'quantity', value, within: undefined },
      };
      expect(posed(other, 1, shelf)).toEqual(posed(asked, 1, shelf));
    }
  });

  it('it holds no id, point, reason, source, step or difficulty of its question', () => {
    for (const [asked, shelf] of all) {
      const shown = posed(asked, 1, shelf)!;
      const fields = Object.keys(shown).sort();
      const known = {
        'choose-one': ['ask', 'choices', 'kind', 'question'],
        'choose-all': ['ask', 'choices', 'kind', 'question'],
        order: ['ask', 'choices', 'kind', 'question'],
        number: ['ask', 'kind', 'question', 'unit', 'unitLabel'],
        'find-fault': ['ask', 'kind', 'question', 'wall'],
      } as const;
      expect(fields).toEqual(known[asked.kind]);
      expect(JSON.stringify(shown)).not.toContain(`"${asked.id}"`);
      if ('choices' in shown) {
        for (const choice of shown.choices) expect(Object.keys(choice)).toEqual(['key', 'say']);
      }
    }
  });

  it('its keys are twelve signs each, none twice, and the right one stands at every place', () => {
    const places = new Map<string, number>();
    for (const [asked, shelf] of of('choose-one')) {
      const key = keyTo(asked, shelf)!;
      if (key.kind !== 'choose-one') throw new Error(key.kind);
      for (let seed = 0; seed < 60; seed += 1) {
        const shown = posed(asked, seed, shelf)!;
        const keys: readonly string[] =
          'choices' in shown ? shown.choices.map(({ key }) => key) : [];
        expect(new Set(keys).size).toBe(keys.length);
        expect(keys.every((key) => /^[0-9a-z]{12}$/.test(key))).toBe(true);
        const place = `${keys.indexOf(key.right)} of ${keys.length}`;
        places.set(place, (places.get(place) ?? 0) + 1);
      }
    }
    for (const size of new Set([...places.keys()].map((place) => place.split(' of ')[1]!))) {
      const counts = Array.from(
        { length: Number(size) },
        (_, at) => places.get(`${at} of ${size}`) ?? 0,
      );
      const mean = counts.reduce((sum, count) => sum + count, 0) / counts.length;
      // Five standard deviations of a count about its mean, so that chance does not fail it.
      for (const count of counts) expect(Math.abs(count - mean)).toBeLessThan(5 * Math.sqrt(mean));
    }
  });
});

describe('laws: what is posed can be shown', () => {
  it('no name in braces is left, in any language', () => {
    for (const [asked, shelf] of all) {
      const texts = JSON.stringify([posed(asked, 1, shelf), keyTo(asked, shelf)]);
      expect(texts, asked.id).not.toMatch(/\{[a-z][a-z0-9-]*\}/);
    }
  });

  it('the wall of a fault reads back as an attempt, and its review has that one fault', () => {
    for (const [asked, shelf] of all) {
      const shown = posed(asked, 1, shelf);
      if (shown?.kind !== 'find-fault' || asked.kind !== 'find-fault') continue;
      const { method, site, dataSheet, steps } = shown.wall;
      const attempt = attemptFrom({ method, site, dataSheet, steps }, shelf);
      expect(attempt.ok, asked.id).toBe(true);
      const items = attempt.ok ? review(attempt.value).items : [];
      expect(
        items.map(({ kind }) => kind),
        asked.id,
      ).toEqual([asked.fault.kind]);
    }
  });
});
