import { describe, expect, it, test } from 'vitest';
import type { AttemptMode } from '#engine/marking/kept-attempt.ts';
import { inspect } from '#ui/mockup/inspection.ts';
import { Mockup } from '#ui/mockup/mockup.svelte.ts';
import { wallFrom } from '#ui/mockup/wall-address.ts';
import { tinyBundle, tinySequence } from '../tiny-content.ts';

function mockup(mode: AttemptMode, asked = ''): Mockup {
  const params = new URLSearchParams(`mode=${mode}&${asked}`);
  const wall = wallFrom(tinyBundle.method, params);
  if (!wall.ok) throw new Error(JSON.stringify(wall.error));
  return new Mockup(tinyBundle, wall.value, tinySequence(wall.value.site));
}

const setTo = (wall: Mockup, value: string) => wall.entries.forEach((e) => e.write(value, 'en'));

function put(wall: Mockup, card: string, value = '8 in'): string {
  wall.choose(card);
  setTo(wall, value);
  return wall.place();
}

const cards = (wall: Mockup) => wall.played.map(({ step }) => step);

const scoreOf = (wall: Mockup): number => {
  const inspected = inspect(tinyBundle, wall.wall, wall, {
    id: 'x',
    finished: '2030-05-01T07:30:00.000Z',
  });
  if (!inspected.ok) throw new Error(JSON.stringify(inspected.error));
  return inspected.value.kept.score;
};

describe('truth', () => {
  test('guided, a right build is taken card by card and marks at 100', () => {
    const wall = mockup('guided');
    expect(put(wall, 'prime')).toBe('placed');
    wall.wait(1);
    wall.wait(1);
    expect(put(wall, 'hang')).toBe('placed');
    expect(wall.isComplete).toBe(true);
    expect(scoreOf(wall)).toBe(100);
    expect(wall.played).toEqual([
      { step: 'prime', minute: 0 },
      { step: 'hang', minute: 2, settings: { 'turn-up': '8 in' } },
    ]);
  });

  test('guided, a card that cannot come yet is refused with the reason of what is missing', () => {
    const wall = mockup('guided');
    expect(put(wall, 'hang')).toBe('refused');
    expect(wall.refusal).toMatchObject({ kind: 'not-yet', because: [{ en: 'It bonds.' }] });
    expect(JSON.stringify(wall.refusal)).not.toContain('Prime');
    expect(wall.chosen).toBe('hang');
    expect(cards(wall)).toEqual([]);
    expect(wall.help).toEqual(['refusal']);
  });

  test('guided, nothing comes on what is still wet, and waiting mends it', () => {
    const wall = mockup('guided');
    put(wall, 'prime');
    wall.wait(1);
    expect(put(wall, 'hang')).toBe('refused');
    expect(wall.refusal).toMatchObject({ kind: 'still-wet', test: { en: 'Touch it.' } });
    wall.wait(1);
    expect(wall.chosen).toBe('hang');
    expect(wall.entries[0]?.isRight).toBe(true);
    expect(wall.place()).toBe('placed');
  });

  test('guided, a decoy is refused with what is wrong with it', () => {
    const wall = mockup('guided');
    expect(put(wall, 'heat')).toBe('refused');
    expect(wall.refusal).toMatchObject({ kind: 'stray', because: { en: 'It burns.' } });
  });

  test('guided, a step of another wall is refused', () => {
    const wall = mockup('guided');
    expect(put(wall, 'set-edge')).toBe('refused');
    expect(wall.refusal).toEqual({ kind: 'stray', because: undefined });
  });

  test('guided, a setting out of tolerance is refused; asked again, what the data sheet asks is told', () => {
    const wall = mockup('guided');
    put(wall, 'prime');
    wall.wait(5);
    expect(put(wall, 'hang', '7 in')).toBe('refused');
    expect(wall.refusal).toMatchObject({ kind: 'tolerance', isTold: false });
    setTo(wall, '7 1/2 in');
    expect(wall.place()).toBe('refused');
    expect(wall.refusal).toMatchObject({ kind: 'tolerance', isTold: true });
    expect(wall.help).toEqual(['refusal', 'refusal']);
  });

  test('the same refusal pressed twice costs once', () => {
    const wall = mockup('guided');
    put(wall, 'hang');
    wall.place();
    expect(wall.help).toEqual(['refusal']);
    put(wall, 'prime');
    put(wall, 'hang');
    expect(wall.help).toEqual(['refusal', 'refusal']);
  });

  test('on your own, everything is taken and marked at the end', () => {
    const wall = mockup('own');
    for (const card of ['hang', 'heat', 'prime', 'set-edge']) {
      expect(put(wall, card, '6 in')).toBe('placed');
    }
    expect(cards(wall)).toEqual(['hang', 'heat', 'prime', 'set-edge']);
    expect(wall.help).toEqual([]);
    expect(scoreOf(wall)).toBeLessThan(60);
  });

  test('a card with a setting that nobody made is not put up', () => {
    const wall = mockup('own');
    wall.choose('hang');
    expect(wall.place()).toBe('unset');
    expect(cards(wall)).toEqual([]);
  });

  test('a hint climbs three rungs for the next step, each at its price', () => {
    const wall = mockup('guided');
    expect(wall.rung).toBe('reason');
    wall.takeHint();
    wall.takeHint();
    wall.takeHint();
    wall.takeHint();
    expect(wall.hints.map(({ texts }) => texts.map(({ en }) => en))).toEqual([
      ['It bonds.'],
      ['All over'],
      ['Prime'],
    ]);
    expect(wall.rung).toBeUndefined();
    expect(wall.help).toEqual(['reason', 'key-point', 'step']);
    put(wall, 'prime');
    expect(wall.hints).toEqual([]);
    expect(wall.rung).toBe('reason');
    wall.wait(5);
    put(wall, 'hang');
    expect(wall.rung).toBeUndefined();
    expect(scoreOf(wall)).toBe(96.5);
  });

  test('a knuckle tells wet from tacky from dry', () => {
    const wall = mockup('own');
    const feels = () => {
      wall.touch();
      return wall.touched?.map(({ feel }) => feel);
    };
    expect(feels()).toEqual([]);
    put(wall, 'prime');
    expect(feels()).toEqual(['wet']);
    wall.wait(1);
    expect(wall.touched).toBeUndefined();
    expect(feels()).toEqual(['tacky']);
    wall.wait(1);
    expect(feels()).toEqual(['dry']);
  });

  test('on a stretch only its cards lie on the bench, and what comes before stands', () => {
    const wall = mockup('guided', 'part=hang..hang');
    expect(wall.bench.map(({ id }) => id)).toEqual(['hang']);
    expect(wall.before.map(({ id }) => id)).toEqual(['prime']);
    expect(put(wall, 'hang')).toBe('placed');
    expect(wall.isComplete).toBe(true);
    expect(scoreOf(wall)).toBe(100);
  });
});

describe('laws', () => {
  it('undoing every move leads back to an empty wall, and help stays', () => {
    const wall = mockup('guided');
    put(wall, 'hang');
    put(wall, 'prime');
    wall.wait(5);
    put(wall, 'hang');
    expect(wall.moves.length).toBe(3);
    wall.undo();
    expect(cards(wall)).toEqual(['prime']);
    expect(wall.minute).toBe(5);
    wall.undo();
    expect(wall.minute).toBe(0);
    expect(put(wall, 'hang')).toBe('refused');
    wall.undo();
    expect(cards(wall)).toEqual([]);
    wall.undo();
    expect(wall.moves).toEqual([]);
    expect(wall.help).toEqual(['refusal', 'refusal']);
  });

  it('what was undone can be done again at once', () => {
    const wall = mockup('guided');
    put(wall, 'prime');
    wall.wait(5);
    put(wall, 'hang');
    wall.undo();
    expect(put(wall, 'hang')).toBe('placed');
  });

  it('goes on where it was left, with the same clock and the same wet primer', () => {
    const left = mockup('guided');
    put(left, 'prime');
    left.wait(1);
    const kept: unknown = JSON.parse(JSON.stringify({ moves: left.moves, helped: left.helped }));
    const wall = mockup('guided');
    expect(wall.resume(kept as Mockup)).toBe(true);
    expect(put(wall, 'hang')).toBe('refused');
    wall.wait(1);
    expect(put(wall, 'hang')).toBe('placed');
  });

  it('refuses to go on with a card that the bench no longer has', () => {
    const wall = mockup('guided');
    const moves = [{ card: 'paint', settings: {} }];
    expect(wall.resume({ moves, helped: [] })).toBe(false);
    expect(wall.moves).toEqual([]);
  });

  it('a setting starts the same for the same seed, and never at a right value', () => {
    const starts = Array.from({ length: 30 }, (_, seed) => {
      const wall = mockup('own', `seed=${seed + 1}`);
      wall.choose('hang');
      const again = mockup('own', `seed=${seed + 1}`);
      again.choose('hang');
      expect(again.entries[0]?.value).toEqual(wall.entries[0]?.value);
      wall.entries[0]!.keep();
      wall.place();
      return wall.played[0]?.settings?.['turn-up'];
    });
    expect(new Set(starts).size).toBeGreaterThan(3);
    for (const start of starts) expect(Number.parseFloat(start!)).toBeLessThan(8);
  });

  it('starting again takes everything down, help too', () => {
    const wall = mockup('guided');
    put(wall, 'hang');
    put(wall, 'prime');
    wall.startAgain();
    expect([wall.moves, wall.helped, wall.chosen]).toEqual([[], [], undefined]);
    expect(wall.left.length).toBe(wall.bench.length);
  });
});
