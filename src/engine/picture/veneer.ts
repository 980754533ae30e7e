import { paint } from './paint.ts';
import { rectangle } from './point.ts';
import type { Solid } from './scene.ts';

/** Modular brick in 2 2/3 in courses behind a 2 in cavity: common practice. */
export const cavity = 2;
export const wythe = 3.625;
const course = 8 / 3;
const joint = 0.375;

/** The brick that will stand on the shelf: not there yet, and drawn so. */
export function veneerGhost(bottom: number, top: number): readonly Solid[] {
  const courses = Math.ceil((top - bottom) / course);
  return Array.from({ length: courses }, (_, index): Solid => {
    const low = bottom + joint + index * course;
    const high = Math.min(low + course - joint, top);
    return {
      what: 'veneer',
      points: rectangle(cavity, low, cavity + wythe, high),
      closed: true,
      paint: paint('hair', 'none', 'ghost'),
      mark: index === courses - 2 ? [cavity + wythe / 2, low + course / 2] : undefined,
    };
  });
}

/** Brick that stands already, from a joint at `top` downward. */
export function brickBelow(bottom: number, top: number): readonly Solid[] {
  const courses = Math.ceil((top - bottom) / course);
  return Array.from({ length: courses }, (_, index): Solid => {
    const high = top - index * course;
    const low = Math.max(high - course + joint, bottom);
    return {
      what: 'brick-below',
      points: rectangle(cavity, low, cavity + wythe, high),
      closed: true,
      paint: paint('medium', 'brick'),
      mark: index === 1 ? [cavity + wythe / 2, (low + high) / 2] : undefined,
    };
  });
}
