import { m } from '#ui/messages/generated/messages.js';

const words = {
  apprentice: m.role_apprentice,
  trainer: m.role_trainer,
  examiner: m.role_examiner,
  office: m.role_office,
} as const;

export type RoleName = keyof typeof words;

export const roleWord = (role: RoleName): string => words[role]();

export const roleWords = (roles: readonly RoleName[]): string => roles.map(roleWord).join(', ');
