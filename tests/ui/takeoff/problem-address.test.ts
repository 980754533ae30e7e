import { describe, expect, test } from 'vitest';
import { familiesOf, firstAddress, nextAddress } from '#ui/takeoff/next-problem.ts';
import { addressOf, problemFrom, type ProblemAddress } from '#ui/takeoff/problem-address.ts';

const read = (address: string) => {
  const { pathname, searchParams } = new URL(address, 'http://localhost');
  return problemFrom(decodeURIComponent(pathname.split('/').at(-1) ?? ''), searchParams);
};

describe('truth', () => {
  test('an address says no more than it needs to', () => {
    const plain: ProblemAddress = { family: 'seam-tape', seed: '7', form: 'entry', among: 'this' };
    expect(addressOf(plain)).toBe('/takeoff/seam-tape?seed=7');
    expect(addressOf({ ...plain, form: 'choice', among: ['a', 'b'] })).toBe(
      '/takeoff/seam-tape?seed=7&form=choice&among=a,b',
    );
  });

  test('what it cannot go by is named and left out', () => {
    const { address, faults } = read('/takeoff/seam-tape?seed=seven&form=aloud');
    expect(faults).toEqual([
      { name: 'seed', given: 'seven' },
      { name: 'form', given: 'aloud' },
    ]);
    expect(address).toEqual({ family: 'seam-tape', seed: '1', form: 'entry', among: 'this' });
  });

  test('a practice of one family stays with it, one of several moves on', () => {
    const known = ['a', 'b', 'c'];
    const one = read(firstAddress(['b'], 'entry', known, [])).address;
    expect(one).toMatchObject({ family: 'b', among: 'this' });
    expect(read(nextAddress(one, known, [])).address.family).toBe('b');
    const two = read(firstAddress(['b', 'c'], 'choice', known, [])).address;
    expect(two).toMatchObject({ form: 'choice', among: ['b', 'c'] });
    expect(read(nextAddress(two, known, [])).address.family).not.toBe(two.family);
    const all = read(firstAddress('all', 'entry', known, [])).address;
    expect(all.among).toBe('all');
    expect(known).toContain(read(nextAddress(all, known, [])).address.family);
  });

  test('a family that is no more is passed over', () => {
    expect(familiesOf({ family: 'a', among: ['a', 'gone'] }, ['a', 'b'])).toEqual(['a']);
  });
});

describe('laws', () => {
  test.each<ProblemAddress>([
    { family: 'a', seed: '1', form: 'entry', among: 'this' },
    { family: 'a', seed: '999999999', form: 'choice', among: 'all' },
    { family: 'a-b', seed: '5', form: 'entry', among: ['a-b', 'c'] },
  ])('an address that is read again is the same: %j', (address) => {
    expect(read(addressOf(address))).toEqual({ address, faults: [] });
  });
});
