import { describe, expect, test } from 'vitest';
import { keyOf, keyPointsOf, stepsOf } from '#engine/tracing/key-point.ts';
import { keyPointStates, toPractise } from '#engine/tracing/key-point-states.ts';
import { partToPractise } from '#engine/tracing/part-to-practise.ts';
import { traced } from '#engine/tracing/trace.ts';
import { usualTrace } from '#engine/tracing/trace-model.ts';
import { content, walls } from '../../content/walls.ts';
import { built, tinyMethod } from './built.ts';

const points = keyPointsOf(tinyMethod);

/** What each key point showed, as `prime/wait +-`. */
const shown = (...attempts: readonly ReturnType<typeof built>[]) =>
  keyPointStates(points, attempts).map(({ point, observations }) =>
    `${keyOf(point).split('/').slice(1).join('/')} ${observations.map((is) => (is ? '+' : '-')).join('')}`.trim(),
  );

const right = built(['prime@0', 'set-edge@0', 'hang@500 | turn-up=8 in']);

describe('truth', () => {
  test('a wall built right shows every key point right', () => {
    expect(right.review.items).toEqual([]);
    expect(shown(right)).toEqual([
      'prime/place +',
      'prime/wait +',
      'set-edge/place +',
      'hang/place +',
      'hang/setting/turn-up +',
    ]);
  });

  test('a deviation is held against the key point that it is about, and no other', () => {
    const rushed = built(['prime@0', 'set-edge@0', 'hang@1 | turn-up=8 in']);
    const low = built(['prime@0', 'set-edge@0', 'hang@500 | turn-up=1 in']);
    const late = built(['prime@0', 'hang@500 | turn-up=8 in', 'set-edge@500']);
    expect(shown(right, rushed, low, late)).toEqual([
      'prime/place ++++',
      'prime/wait +-++',
      'set-edge/place +++-',
      'hang/place ++++',
      'hang/setting/turn-up ++-+',
    ]);
  });

  test('what a review could not judge says nothing', () => {
    // No clock, no setting, no edge on a plain wall, and what was left out shows no wait.
    expect(shown(built(['prime', 'hang'], 'plain'))).toEqual([
      'prime/place +',
      'prime/wait',
      'set-edge/place',
      'hang/place +',
      'hang/setting/turn-up',
    ]);
    expect(shown(built(['set-edge@0', 'hang@0'])).slice(0, 2)).toEqual([
      'prime/place -',
      'prime/wait',
    ]);
  });

  test('a step as a whole is right where nothing is held against it', () => {
    const low = built(['prime@0', 'set-edge@0', 'hang@1 | turn-up=1 in']);
    const states = keyPointStates(stepsOf(tinyMethod), [right, low]);
    expect(states.map(({ point, observations }) => [point.step, observations])).toEqual([
      ['prime', [true, false]],
      ['set-edge', [true, true]],
      ['hang', [true, false]],
    ]);
  });

  test('how sure one is follows the trace of what was seen, from the first guess on', () => {
    const low = built(['prime@0', 'set-edge@0', 'hang@500 | turn-up=1 in']);
    const states = keyPointStates(points, [right, low, right, right]);
    expect(states.at(-1)).toMatchObject({
      probability: traced(usualTrace, [true, false, true, true]).at(-1)!.next,
      lastSeen: 3,
    });
    expect(keyPointStates(points, [])).toEqual(
      points.map((point) => ({
        point,
        observations: [],
        probability: usualTrace.known,
        isSure: false,
        lastSeen: undefined,
      })),
    );
    expect(keyPointStates(points, [right, right, right]).every(({ isSure }) => isSure)).toBe(true);
  });
});

describe('what to practise next', () => {
  const keys = (states: ReturnType<typeof toPractise>) =>
    states.map(({ point }) => `${point.step}/${point.kind}`);

  test('the least sure comes first, and what is sure does not come', () => {
    const low = built(['prime@0', 'set-edge@0', 'hang@500 | turn-up=1 in']);
    expect(keys(toPractise(keyPointStates(points, [right, right, right])))).toEqual([]);
    expect(keys(toPractise(keyPointStates(points, [right, right, low, right])))).toEqual([
      'hang/setting',
    ]);
    expect(keys(toPractise(keyPointStates(points, [right, low])))[0]).toBe('hang/setting');
  });

  test('of what is equally sure, the most severe comes first, then what was not seen for longest', () => {
    expect(keys(toPractise(keyPointStates(points, [])))).toEqual([
      'prime/place',
      'prime/wait',
      'hang/place',
      'hang/setting',
      'set-edge/place',
    ]);
    // Prime and hang with its setting were seen once each; the wait never, which is less sure.
    const first = built(['prime@0', 'set-edge@0']);
    const second = built(['hang | turn-up=8 in', 'set-edge']);
    const states = keyPointStates(points, [first, second]).filter(
      ({ point }) => point.kind !== 'place',
    );
    expect(keys(toPractise(states))).toEqual(['prime/wait', 'hang/setting']);
    const once = keyPointStates(points, [right]).map((state, at) => ({
      ...state,
      lastSeen: points.length - at,
    }));
    expect(keys(toPractise(once))).toEqual([
      'hang/setting',
      'hang/place',
      'prime/wait',
      'prime/place',
      'set-edge/place',
    ]);
  });

  test('the stretch to practise lies around the step that is least sure, on this wall', () => {
    const { sequence } = walls[0]!;
    const states = keyPointStates(keyPointsOf(sequence.method), []);
    const weak = sequence.steps[5]!.id;
    const unsure = states.map((state) =>
      state.point.step === weak ? { ...state, probability: 0.1 } : state,
    );
    expect(partToPractise(sequence, unsure)).toEqual([
      sequence.steps[4]!.id,
      sequence.steps[6]!.id,
    ]);
    const sure = states.map((state) => ({ ...state, isSure: true }));
    expect(partToPractise(sequence, sure)).toBeUndefined();
    expect(partToPractise(sequence, unsure, 100)).toBeUndefined();
  });
});

describe('laws', () => {
  test('no two key points of a shipped method share a name', () => {
    for (const method of content.methods.values()) {
      const keys = [...stepsOf(method), ...keyPointsOf(method)].map(keyOf);
      expect(new Set(keys).size).toBe(keys.length);
    }
  });
});
