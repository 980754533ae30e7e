import { m } from '#ui/messages/generated/messages.js';

const words = {
  NAME_WRONG: m.crews_name_wrong,
  NAME_TAKEN: m.crews_name_taken,
  ABSENT: m.crews_absent,
} as const;

export type CrewFaultName = keyof typeof words;

export const crewFaultWords = (fault: CrewFaultName | undefined): string | undefined =>
  fault && words[fault]();
