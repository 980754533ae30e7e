import { m } from '#ui/messages/generated/messages.js';

const words = {
  passed: m.state_passed,
  stuck: m.state_stuck,
  'asked again': m.state_again,
  started: m.state_started,
  'not started': m.state_not_started,
  late: m.state_late,
} as const;

export type State = Exclude<keyof typeof words, 'late'>;
export type Filter = keyof typeof words;

export const filters = Object.keys(words) as readonly Filter[];

export const stateWords = (state: Filter): string => words[state]();
