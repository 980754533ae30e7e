import fc from 'fast-check';
import type { BankItem } from '#engine/exam/bank.ts';
import { drawForm, type Form } from '#engine/exam/form.ts';
import type { FormRequest } from '#engine/exam/form-request.ts';

const topics = ['prime', 'seam', 'toe'] as const;

/** Difficulties from 0.3 to 0.95 in thousandths, so that sums of them are easy to follow. */
export const anyItem = (id: string, topic: string): fc.Arbitrary<BankItem> =>
  fc.record({
    id: fc.constant(id),
    topic: fc.constant(topic),
    kind: fc.constantFrom('choose-one', 'order'),
    difficulty: fc.integer({ min: 300, max: 950 }).map((thousandths) => thousandths / 1000),
    exposures: fc.nat(4),
  });

/** `count` items of each topic, `seam-0` and so on. */
export const anyBank = (least: number, most: number): fc.Arbitrary<readonly BankItem[]> =>
  fc
    .integer({ min: least, max: most })
    .chain((count) =>
      fc.tuple(
        ...topics.flatMap((topic) =>
          Array.from({ length: count }, (_, index) => anyItem(`${topic}-${index}`, topic)),
        ),
      ),
    );

/** Evenly spread from 0.3 upward, and never seen. */
export const evenBank = (count: number): readonly BankItem[] =>
  topics.flatMap((topic) =>
    Array.from({ length: count }, (_, index) => ({
      id: `${topic}-${index}`,
      topic,
      kind: 'choose-one',
      difficulty: 0.3 + (0.65 * index) / Math.max(1, count - 1),
      exposures: 0,
    })),
  );

export const blueprint = new Map([
  ['prime', 3],
  ['seam', 2],
  ['toe', 4],
]);

export function formFrom(request: Partial<FormRequest<BankItem>>): Form<BankItem> {
  const form = drawForm({ bank: evenBank(30), blueprint, seed: 1, drawn: 0, ...request });
  if (!form.ok) throw new Error(form.error.map(({ code }) => code).join(', '));
  return form.value;
}
