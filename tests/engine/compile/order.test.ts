import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkOrder } from '#engine/compile/order.ts';
import { strayFile } from '#engine/compile/source-file.ts';
import type { Method } from '#engine/method/method.ts';
import { partialOrder, type Pair } from '#engine/method/partial-order.ts';
import { allSites, holds, type Site } from '#engine/method/site.ts';
import { anySmallMethod } from './small-methods.ts';

const codesOf = (method: Method): readonly string[] => {
  const file = strayFile('methods/small.yaml', '');
  checkOrder(file, method);
  return file.faults.map(({ code }) => code);
};

/** The constraints that bind on one site, without those of a step on itself. */
const pairsOn = ({ steps }: Method, site: Site): readonly Pair[] => {
  const present = steps.map(({ when }) => holds(when, site));
  return steps.flatMap(({ after }, index) =>
    after
      .filter(({ when }) => holds(when, site))
      .map(({ step }): Pair => [steps.findIndex(({ id }) => id === step), index])
      .filter(([before, later]) => before !== later && present[before] && present[later]),
  );
};

describe('laws', () => {
  it('a circle is reported if and only if some site has one', () => {
    fc.assert(
      fc.property(anySmallMethod, (method) => {
        const circular = allSites(method.site).some(
          (site) => !partialOrder(method.steps.length, pairsOn(method, site)).ok,
        );
        expect(codesOf(method).includes('CIRCULAR_ORDER')).toBe(circular);
      }),
      { numRuns: 500 },
    );
  });

  it('where nothing is reported, the steps as listed are a correct order of every site', () => {
    fc.assert(
      fc.property(anySmallMethod, (method) => {
        const pairs = allSites(method.site).flatMap((site) => pairsOn(method, site));
        const isListedRight = pairs.every(([before, after]) => before < after);
        const codes = codesOf(method);
        const isBlamed = codes.includes('CIRCULAR_ORDER') || codes.includes('WRITTEN_OUT_OF_ORDER');
        expect(isBlamed).toBe(!isListedRight);
      }),
      { numRuns: 500 },
    );
  });
});
