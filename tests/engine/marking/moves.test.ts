import { describe, expect, test } from 'vitest';
import { playedIn, waitedIn, wallAnswerFrom } from '#engine/marking/moves.ts';

describe('truth', () => {
  test('each card is up at the minute to which the waits before it add up', () => {
    const moves = [
      { wait: 5 },
      { card: 'a', settings: {} },
      { wait: 60 },
      { wait: 1 },
      { card: 'b', settings: { lap: '4 in' } },
    ];
    expect(playedIn(moves)).toEqual([
      { step: 'a', minute: 5 },
      { step: 'b', minute: 66, settings: { lap: '4 in' } },
    ]);
    expect(waitedIn(moves)).toBe(66);
  });

  test('a wall comes in as moves, and what is none is refused', () => {
    const sound = { kind: 'wall', moves: [{ card: 'a', settings: { lap: '4 in' } }, { wait: 5 }] };
    expect(wallAnswerFrom(sound)).toEqual({ ok: true, value: sound });
    const [card] = sound.moves;
    const odd: readonly unknown[] = [
      undefined,
      [],
      { moves: sound.moves },
      { kind: 'wall', moves: {} },
      { kind: 'wall', moves: [{ wait: 0 }] },
      { kind: 'wall', moves: [{ wait: Infinity }] },
      { kind: 'wall', moves: [{ wait: '5' }] },
      { kind: 'wall', moves: [{ card: 'a' }] },
      { kind: 'wall', moves: [{ card: 'a', settings: { lap: 4 } }] },
      { kind: 'wall', moves: [{ card: 'x'.repeat(121), settings: {} }] },
      { kind: 'wall', moves: Array(501).fill(card) },
    ];
    expect(odd.map((value) => wallAnswerFrom(value).ok)).toEqual(odd.map(() => false));
  });
});
