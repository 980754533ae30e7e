import type { FaultKind } from '#engine/inspection/fault.ts';
import type { Zone } from '#engine/method/drawing.ts';
import type { ChoiceKey } from './choice-key.ts';

/** What somebody answered. Right in its shape once it passed `answerFrom`. */
export type Answer =
  | { readonly kind: 'choose-one'; readonly choice: ChoiceKey }
  | { readonly kind: 'choose-all'; readonly choices: readonly ChoiceKey[] }
  | { readonly kind: 'order'; readonly steps: readonly ChoiceKey[] }
  | { readonly kind: 'number'; readonly text: string }
  | {
      readonly kind: 'find-fault';
      readonly zone: Zone;
      readonly fault: FaultKind;
      readonly card?: string | undefined;
    };
