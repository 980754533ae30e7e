import { flushSync } from 'svelte';
import { describe, expect, test, vi } from 'vitest';
import { slowPicture } from './slow-picture.svelte.ts';

const drawn = () => {
  const made: number[] = [];
  return { made, picture: slowPicture((of) => made.push(of)) };
};

describe('truth', () => {
  test('it is there from the first', () => {
    const { made, picture } = drawn();
    expect(picture.shown).toBe('picture 0');
    expect(made).toEqual([0]);
    picture.stop();
  });

  test('a tap is not held up by it, and it follows by itself', async () => {
    const { made, picture } = drawn();
    flushSync(() => picture.tap());
    expect(made).toEqual([0]);
    expect(picture.shown).toBe('picture 0');
    await vi.waitFor(() => expect(picture.shown).toBe('picture 1'));
    picture.stop();
  });

  test('of many taps in a row only the last is drawn', async () => {
    const { made, picture } = drawn();
    for (let taps = 0; taps < 5; taps += 1) flushSync(() => picture.tap());
    await vi.waitFor(() => expect(picture.shown).toBe('picture 5'));
    expect(made).toEqual([0, 5]);
    picture.stop();
  });

  test('what is left before it was drawn is not drawn any more', async () => {
    const { made, picture } = drawn();
    flushSync(() => picture.tap());
    picture.stop();
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(made).toEqual([0]);
  });
});
