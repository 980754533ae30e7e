import { m } from '#ui/messages/generated/messages.js';

const phases: Readonly<Record<string, () => string>> = {
  waiting: m.sitting_waiting,
  open: m.sitting_open,
  'handed-in': m.sitting_handed_in,
  released: m.sitting_released,
  voided: m.sitting_voided,
};

export const phaseWords = (phase: string): string => (phases[phase] ?? m.result_none)();
