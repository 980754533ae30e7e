import { describe, expect, it } from 'vitest';
import { review } from '#engine/marking/review.ts';
import { isClosed, isOpen } from '#engine/water/repaired.ts';
import type { OpenJoint } from '#engine/water/open-joints.ts';
import { walls } from '../../content/walls.ts';

const joint = (...breaches: readonly number[]): OpenJoint => ({ breaches }) as unknown as OpenJoint;

describe('truth', () => {
  it('a joint is shut when all that keeps it open is repaired', () => {
    expect(isClosed(joint(1, 2), new Set([1]))).toBe(false);
    expect(isClosed(joint(1, 2), new Set([1, 2, 3]))).toBe(true);
  });

  it('a joint that is open by nature stays open', () => {
    expect(isClosed(joint(), new Set([1]))).toBe(false);
  });

  it('a way is shut by any one of its joints', () => {
    const path = [joint(1), joint(2), joint()];
    expect(isOpen({ path }, new Set([2]))).toBe(false);
    expect(isOpen({ path }, new Set([3]))).toBe(true);
  });
});

describe('laws, on every wall', () => {
  it.each(walls)('the smallest repair shuts every way, and no part of it does: $name', (wall) => {
    const { leaks, repair } = review({ sequence: wall.sequence, played: [] }).water;
    const all = new Set(repair);
    expect(leaks.some((leak) => isOpen(leak, all))).toBe(false);
    for (const one of all) {
      const rest = new Set([...all].filter((other) => other !== one));
      expect(leaks.some((leak) => isOpen(leak, rest))).toBe(true);
    }
  });
});
