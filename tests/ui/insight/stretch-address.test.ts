import { describe, expect, test } from 'vitest';
import { partOf } from '#engine/method/part-of.ts';
import { sequenceOf } from '#engine/method/sequence.ts';
import { allSites } from '#engine/method/site.ts';
import type { Spot } from '#engine/tally/spot.ts';
import { stretchAddress } from '#ui/insight/stretch-address.ts';
import { wallFrom } from '#ui/mockup/wall-address.ts';
import { shippedBundle, shippedMethods } from '../shipped-content.ts';

const bundles = shippedMethods.map(shippedBundle);

describe.each(bundles)('$method.id', (bundle) => {
  const { method, dataSheet } = bundle;
  const site = allSites(method.site)[0]!;

  test('whatever goes wrong leads to a stretch that holds it, on a wall that has it', () => {
    for (const { id: step } of method.steps) {
      const spot: Spot = { method: method.id, kind: 'step', step };
      const { pathname, searchParams } = new URL(stretchAddress(bundle, site, spot), 'http://here');
      expect(pathname).toBe(`/practise/${method.id}`);
      const wall = wallFrom(method, searchParams);
      if (!wall.ok) throw new Error(JSON.stringify(wall.error));
      const whole = sequenceOf(method, dataSheet, wall.value.site);
      if (!whole.ok) throw new Error(whole.error.code);
      const built = wall.value.part ? partOf(whole.value, wall.value.part) : whole.value;
      expect(built?.steps.map(({ id }) => id)).toContain(step);
      expect(built!.steps.length).toBeLessThan(whole.value.steps.length);
    }
  });
});
