import { hasBit, isSubset, noBits, setBit } from '#engine/method/bits.ts';
import type { PartialOrder } from '#engine/method/partial-order.ts';
import type { Model, ModelMove } from './model.ts';

/** The machine that does every step once, in any correct order; its states are the order's ideals. */
export const orderModel = (
  order: PartialOrder,
  label: (step: number) => string = String,
): Model<Uint32Array> => ({
  initial: noBits(order.size),
  moves: (done) =>
    [...order.before.keys()].flatMap((step): readonly ModelMove<Uint32Array>[] => {
      if (hasBit(done, step) || !isSubset(order.before[step]!, done)) return [];
      const next = done.slice();
      setBit(next, step);
      return [{ label: label(step), next }];
    }),
  isFinal: (done) => order.before.every((_, step) => hasBit(done, step)),
  key: (done) => done.join(),
});
