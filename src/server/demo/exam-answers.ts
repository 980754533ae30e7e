/**
 * How the invented candidates answer the forms that are drawn for them. A question goes right with a
 * chance that is logistic in ability (two parameters, as in the engine's `item-curve`). Difficulties and
 * slopes are this project's own choice: by what the author expects, then spread by a hash of the
 * question's name, so that the same questions are hard for everybody. A few are made faulty on purpose,
 * so that there is something to find: one in forty is got right the less somebody knows, one in
 * twenty-five is harder in Spanish than in English.
 */
import type { Content } from '#engine/compile/content.ts';
import type { BankItem } from '#engine/exam/bank.ts';
import { drawForm } from '#engine/exam/form.ts';
import type { Blueprint } from '#engine/exam/scheme.ts';
import { fraction, hashText, randomFrom } from '#engine/random.ts';
import { chanceOf, type ItemCurve } from '#engine/statistics/item-curve.ts';
import { expectedShare } from '#engine/written/expected-share.ts';
import type { Difficulty } from '#engine/written/question.ts';

/** What is expected of a question (`expectedShare`) as a difficulty, roughly. */
const hardness: Readonly<Record<Difficulty, number>> = { easy: -2.1, middling: -1, hard: -0.1 };

/** Each in so many is faulty. */
const turnedRound = 40;
const harderInSpanish = 25;
const leftOpen = 0.01;

export type Sitter = { readonly ability: number; readonly language: 'en' | 'es' };

export type Answered = {
  readonly item: string;
  readonly topic: string;
  readonly wasAnswered: boolean;
  readonly isRight: boolean;
};

/** The forms of one part, each drawn with what the earlier ones showed. */
export class ExamForms {
  readonly #exposures = new Map<string, number>();
  readonly #items: readonly Omit<BankItem, 'exposures'>[];
  #drawn = 0;

  constructor(content: Content) {
    this.#items = [...content.topics.values()].flatMap(({ id: topic, questions }) =>
      questions.map(({ id, kind, difficulty }) => ({
        id,
        topic,
        kind,
        difficulty: expectedShare[difficulty],
      })),
    );
    this.#hardness = new Map(
      [...content.topics.values()].flatMap(({ questions }) =>
        questions.map(({ id, difficulty }) => [id, hardness[difficulty]] as const),
      ),
    );
  }

  readonly #hardness: ReadonlyMap<string, number>;

  /** Answers to a form nobody had before; none where the bank is too small for it. */
  sat(blueprint: Blueprint, seed: string, sitter: Sitter, seen: Set<string>): readonly Answered[] {
    const bank = this.#items
      .filter(({ topic }) => blueprint.has(topic))
      .map((item) => ({ ...item, exposures: this.#exposures.get(item.id) ?? 0 }));
    const form = drawForm({ bank, blueprint, seed, drawn: this.#drawn, seen });
    if (!form.ok) return [];
    this.#drawn += 1;
    const random = randomFrom(`${seed}/answers`);
    return form.value.items.map(({ id, topic }) => {
      this.#exposures.set(id, (this.#exposures.get(id) ?? 0) + 1);
      seen.add(id);
      const chance = chanceOf(this.#curve(id, sitter.language), sitter.ability);
      const wasAnswered = fraction(random) >= leftOpen;
      const isRight = fraction(random) < Math.round(chance * 10_000) / 10_000;
      return { item: id, topic, wasAnswered, isRight: wasAnswered && isRight };
    });
  }

  #curve(id: string, language: Sitter['language']): ItemCurve {
    const part = (name: string): number => Number(hashText(`${name}/${id}`) % 1001n) / 1000;
    const isOneIn = (count: number, name: string): boolean =>
      Number(hashText(`${name}/${id}`) % BigInt(count)) === 0;
    const isTurned = isOneIn(turnedRound, 'turned');
    const slope = isTurned ? -0.4 : 0.7 + 1.1 * part('slope');
    const extra = language === 'es' && isOneIn(harderInSpanish, 'spanish') ? 1.2 : 0;
    const difficulty = this.#hardness.get(id)! + 1.4 * (part('difficulty') - 0.5) + extra;
    return { slope, intercept: isTurned ? 0.4 : -slope * difficulty };
  }
}
