import type { FadeAdvice } from '#engine/competence/skill-fade.ts';
import type { QualificationState } from '#engine/competence/qualification-state.ts';
import { m } from '#ui/messages/generated/messages.js';
import { calendarDay } from './calendar-day.ts';

export const stateWords: Readonly<Record<QualificationState, () => string>> = {
  none: m.held_none,
  'in-training': m.held_in_training,
  current: m.held_current,
  due: m.held_due,
  lapsed: m.held_lapsed,
  suspended: m.held_suspended,
  withdrawn: m.held_withdrawn,
};

export const stateLeads: Readonly<Record<QualificationState, () => string>> = {
  none: m.held_none_lead,
  'in-training': m.held_in_training_lead,
  current: m.held_current_lead,
  due: m.held_due_lead,
  lapsed: m.held_lapsed_lead,
  suspended: m.held_suspended_lead,
  withdrawn: m.held_withdrawn_lead,
};

const fades = {
  fresh: m.fade_fresh_lead,
  fading: m.fade_fading_lead,
  faded: m.fade_faded_lead,
} as const;

type ShownFade = {
  readonly advice: FadeAdvice;
  readonly last: string | undefined;
  readonly share: number | undefined;
};

/** In a sentence; the share in steps of five, for it is no finer than that. */
export function fadeSentence({ advice, last, share }: ShownFade): string {
  if (advice === 'never' || last === undefined || share === undefined) return m.fade_never_lead();
  return fades[advice]({ day: calendarDay(last), share: Math.round(share * 20) * 5 });
}

/** In a word or two, where somebody holds the qualification and should practise. */
export const fadeWords = (advice: FadeAdvice): string | undefined =>
  advice === 'fading' ? m.fade_fading() : advice === 'faded' ? m.fade_faded() : undefined;
