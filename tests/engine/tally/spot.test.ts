import { describe, expect, test } from 'vitest';
import { spotKey, spotNamed } from '#engine/tally/spot.ts';
import { tallyOfOne } from '#engine/tally/tally.ts';
import { keptWall } from '../../server/attempts/kept.ts';
import { content, walls } from '../../content/walls.ts';
import { markKept } from '#engine/marking/kept-review.ts';
import { tinyMethod } from '../tracing/built.ts';

describe('laws', () => {
  test.each(walls)('every spot of $name is found again by its name', (wall) => {
    const marked = markKept(keptWall(true, wall), content);
    if (!marked.ok) throw new Error(marked.error[0]!.message);
    for (const { spot } of tallyOfOne({ ...marked.value, person: '' })) {
      expect(spotNamed(spotKey(spot), wall.sequence.method)).toEqual(spot);
    }
  });
});

describe('truth', () => {
  test.each([
    '',
    'tiny-wall',
    'tiny-wall/step',
    'tiny-wall/step/gone',
    'tiny-wall/step/hang/more',
    'tiny-wall/wait/hang',
    'tiny-wall/order/prime',
    'tiny-wall/order/prime/gone',
    'tiny-wall/order/prime/hang/more',
    'tiny-wall/setting/hang',
    'tiny-wall/setting/prime/turn-up',
    'tiny-wall/other/hang',
    'other-wall/step/hang',
  ])('"%s" names no spot of the method', (key) => {
    expect(spotNamed(key, tinyMethod)).toBeUndefined();
  });
});
