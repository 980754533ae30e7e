/**
 * What may be left of a skill that was not used, as advice on whom to let practise: it is an average over
 * many studies, says nothing sure of one person, and is never a state of a certificate.
 *
 * Half of what was gained is lost after about 6.5 months where accuracy was measured, 11 where accuracy and
 * speed were mixed, and 13 where speed was: Tatel & Ackerman, Psychological Bulletin,
 * https://doi.org/10.1037/bul0000481 (457 reports). That it halves again in the next such span is an
 * assumption made here.
 */
import { daysBetween, type IsoDate } from '#engine/calendar.ts';

export const skillMeasures = ['accuracy', 'mixed', 'speed'] as const;
export type SkillMeasure = (typeof skillMeasures)[number];

/** In months. */
export const halfLives: Readonly<Record<SkillMeasure, number>> = {
  accuracy: 6.5,
  mixed: 11,
  speed: 13,
};

const daysInMonth = 365.25 / 12;

/** Of what was gained, the share expected to be left: 1 on the day of practice, above 0 ever after. */
export const shareLeft = (last: IsoDate, today: IsoDate, measure: SkillMeasure): number =>
  0.5 ** (Math.max(0, daysBetween(last, today)) / daysInMonth / halfLives[measure]);

/** `fresh`: three quarters or more. `fading`: half or more. `faded`: less. `never`: nothing was practised here. */
export const fadeAdvices = ['fresh', 'fading', 'faded', 'never'] as const;
export type FadeAdvice = (typeof fadeAdvices)[number];

export type Fade = {
  readonly last: IsoDate | undefined;
  readonly share: number | undefined;
  readonly advice: FadeAdvice;
};

/** Order and settings of a wall are a matter of accuracy, so that is what is measured by default. */
export function skillFade(
  last: IsoDate | undefined,
  today: IsoDate,
  measure: SkillMeasure = 'accuracy',
): Fade {
  if (last === undefined) return { last, share: undefined, advice: 'never' };
  const share = shareLeft(last, today, measure);
  return { last, share, advice: share >= 0.75 ? 'fresh' : share >= 0.5 ? 'fading' : 'faded' };
}
