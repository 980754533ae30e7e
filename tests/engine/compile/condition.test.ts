import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canMeet } from '#engine/compile/condition.ts';
import { allSites, holds } from '#engine/method/site.ts';
import { anyCondition, questions } from './small-methods.ts';

describe('laws', () => {
  it('conditions can meet if and only if some site meets all of them', () => {
    const sites = allSites(questions);
    fc.assert(
      fc.property(fc.array(anyCondition, { maxLength: 4 }), (conditions) => {
        const met = sites.some((site) => conditions.every((each) => holds(each, site)));
        expect(canMeet(questions, ...conditions)).toBe(met);
      }),
    );
  });

  it('a question or a value that there is not counts as no condition', () => {
    expect(canMeet(questions, new Map([['colour', ['red']]]))).toBe(true);
    expect(canMeet(questions, new Map([['edge', ['red']]]), new Map([['edge', ['plain']]]))).toBe(
      true,
    );
  });
});
