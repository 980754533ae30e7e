import { describe, expect, it } from 'vitest';
import { catalogueOf } from '#engine/compile/catalogue.ts';
import { fromText, toText } from '#engine/compile/transport.ts';
import { writtenBundle, type WrittenBundle } from '#engine/compile/written-bundle.ts';
import { keyTo } from '#engine/written/key.ts';
import { markAnswer } from '#engine/written/mark-answer.ts';
import { posed } from '#engine/written/posed.ts';
import { openContent } from '#server/content.ts';
import { soundFolder } from '../../content/fixtures.ts';

const content = openContent(soundFolder);
const bundle = writtenBundle(content, 'tiny')!;

describe('truth', () => {
  it('a bundle holds a topic, with the data sheets and sources that it names', () => {
    expect(bundle.topic.questions).toHaveLength(6);
    expect(bundle.drawnOn).toEqual(['tiny-wall']);
    expect([...bundle.dataSheets.keys()].sort()).toEqual(['changed', 'tiny']);
    expect([...bundle.sources.keys()].sort()).toEqual(['a-standard', 'common-practice']);
    expect(bundle.revision).toBe(content.revision);
  });

  it('with its methods it is all that posing and marking need, also after its way to a browser', () => {
    const bare = fromText(toText(bundle)) as WrittenBundle;
    const methods = new Map(bare.drawnOn.map((id) => [id, content.methods.get(id)!]));
    const sent = { ...bare, methods };
    for (const question of sent.topic.questions) {
      const original = bundle.topic.questions.find(({ id }) => id === question.id)!;
      expect(posed(question, 1, sent)).toEqual(posed(original, 1, content));
      expect(keyTo(question, sent)).toEqual(keyTo(original, content));
      const answer = { kind: 'number', text: '9 in' } as const;
      expect(markAnswer(question, answer, sent)).toEqual(markAnswer(original, answer, content));
    }
  });

  it('there is no bundle of a topic that is not there', () => {
    expect(writtenBundle(content, 'nothing')).toBeUndefined();
    expect(writtenBundle(content, '__proto__')).toBeUndefined();
    expect(writtenBundle(content, 'patterns')).toBeUndefined();
  });

  it('the catalogue counts the questions of each topic by their kind', () => {
    expect(catalogueOf(content).topics.map(({ id, questions }) => [id, questions])).toEqual([
      ['tiny', { 'choose-one': 1, 'choose-all': 1, order: 1, number: 2, 'find-fault': 1 }],
    ]);
  });
});
