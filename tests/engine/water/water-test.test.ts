import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Joint, JointId, Place, PlaceId, StepId } from '#engine/method/method.ts';
import type { Breach, OpenJoint } from '#engine/water/open-joints.ts';
import { smallestRepair } from '#engine/water/smallest-repair.ts';
import { waterTest } from '#engine/water/water-test.ts';

const words = { en: '-', es: '-' };

const place = (id: string, side: Place['side'] = 'between'): Place => ({
  id: id as PlaceId,
  name: words,
  side,
});

const joint = (from: string, to: string, ...keepers: readonly string[]): Joint => ({
  id: `${from}-${to}` as JointId,
  name: words,
  from: from as PlaceId,
  to: to as PlaceId,
  when: new Map(),
  zone: 'wall',
  keptBy: keepers.map((step) => ({
    step: step as StepId,
    fails: ['left-out', 'out-of-tolerance'],
    setting: undefined,
  })),
  spoiltBy: [],
});

const leftOut = (step: string): Breach => ({ kind: 'left-out', steps: [step as StepId] });

const places = [place('cavity', 'wet'), place('behind'), place('backup', 'dry')];
const backedUp = [joint('cavity', 'behind', 'lap', 'seal'), joint('behind', 'backup', 'tape')];

describe('water', () => {
  it('stays out while one of two joints in a row holds', () => {
    expect(waterTest(places, backedUp, [leftOut('lap'), leftOut('seal')]).leaks).toEqual([]);
  });

  it('comes in when both fail, and either repair stops it', () => {
    const { leaks, repair } = waterTest(places, backedUp, [leftOut('lap'), leftOut('tape')]);
    expect(leaks.map(({ path }) => path.map((open) => open.joint.id))).toEqual([
      ['cavity-behind', 'behind-backup'],
    ]);
    expect(leaks[0]!.breaches).toEqual([0, 1]);
    expect(repair).toHaveLength(1);
  });

  it('passes a joint that nobody keeps, and no repair closes that', () => {
    const open = [joint('cavity', 'backup')];
    expect(waterTest(places, open, [])).toMatchObject({
      leaks: [{ into: 'backup', breaches: [] }],
      repair: undefined,
    });
  });

  it('does not mind a failure that a joint is not kept from', () => {
    const rushed: Breach = { kind: 'rushed', steps: ['tape' as StepId, 'lap' as StepId] };
    expect(waterTest(places, backedUp, [rushed]).leaks).toEqual([]);
  });

  it('minds only the setting that a keeper names', () => {
    const [kept] = [joint('cavity', 'backup', 'line')];
    const height = 'height' as never;
    const picky = {
      ...kept,
      keptBy: kept.keptBy.map((keeper) => ({ ...keeper, setting: height })),
    };
    const off = (setting: string): Breach => ({
      kind: 'out-of-tolerance',
      steps: ['line' as StepId],
      setting: setting as never,
    });
    expect(waterTest(places, [picky], [off('width')]).leaks).toEqual([]);
    expect(waterTest(places, [picky], [off('height')]).leaks).toHaveLength(1);
  });
});

const somePaths = fc.array(
  fc.array(fc.uniqueArray(fc.nat(6), { maxLength: 3 }), { minLength: 1, maxLength: 3 }),
  { maxLength: 6 },
);

const openPath = (joints: readonly (readonly number[])[]): readonly OpenJoint[] =>
  joints.map((breaches) => ({ joint: joint('a', 'b'), breaches }));

const closes = (paths: readonly (readonly (readonly number[])[])[], repaired: readonly number[]) =>
  paths.every((path) =>
    path.some((joint) => joint.length > 0 && joint.every((breach) => repaired.includes(breach))),
  );

/** Tries every set of the seven breaches. */
function bruteForce(paths: readonly (readonly (readonly number[])[])[]): number | undefined {
  const sets = Array.from({ length: 2 ** 7 }, (_, bits) =>
    [0, 1, 2, 3, 4, 5, 6].filter((breach) => (bits >> breach) & 1),
  );
  const sizes = sets.filter((set) => closes(paths, set)).map((set) => set.length);
  return sizes.length > 0 ? Math.min(...sizes) : undefined;
}

describe('laws of repair', () => {
  it('the smallest repair closes every path and is as small as trying all sets finds', () => {
    fc.assert(
      fc.property(somePaths, (paths) => {
        const repair = smallestRepair(paths.map(openPath));
        expect(repair?.length).toBe(bruteForce(paths));
        if (repair) expect(closes(paths, repair)).toBe(true);
      }),
    );
  });
});
