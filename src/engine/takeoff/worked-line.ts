import type { Text } from '#engine/text.ts';

/** One line of a worked solution. */
export type WorkedLine = {
  readonly kind:
    | 'why'
    /** Why a formula takes one way and not the other. */
    | 'since'
    /** Read off a chart of the data sheet. */
    | 'chart'
    | 'words'
    | 'convert'
    | 'numbers'
    | 'step'
    | 'round'
    | 'answer';
  readonly text: Text;
};
