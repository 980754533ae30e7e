import type { DecoyId, SettingId, StepId } from '#engine/method/method.ts';
import { record } from '#engine/compile/group.ts';
import { anyQuantity } from '#engine/compile/quantity.ts';
import { mapped, optional, wrongShape, type Reader } from '#engine/compile/reader.ts';
import { idOf, plain } from '#engine/compile/words.ts';

const step = idOf<StepId>('step');

const minutes: Reader<number> = mapped(
  {
    blank: '',
    read: (here) => {
      const given = plain.read(here);
      if (given !== '' && !/^\d{1,4}$/.test(given)) {
        wrongShape(here, 'whole minutes', 'Write how many minutes were waited: 1.');
      }
      return given;
    },
  },
  Number,
);

/** A rushed step stands beside its minutes, as one fault. */
export const writtenFault = record({
  'left-out': optional(step, undefined),
  'out-of-order': optional(record({ before: step, after: step }), undefined),
  rushed: optional(step, undefined),
  minutes: optional(minutes, undefined),
  'out-of-tolerance': optional(
    record({ step, setting: idOf<SettingId>('setting'), value: anyQuantity }),
    undefined,
  ),
  'not-on-this-wall': optional(idOf<DecoyId>('decoy'), undefined),
});

export type WrittenFault = typeof writtenFault.blank;
