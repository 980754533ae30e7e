import { describe, expect, it } from 'vitest';
import { rational } from '#engine/measure/rational.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import { drawWall } from '#engine/picture/draw-wall.ts';
import type { Drawing, Shape, ViewId } from '#engine/picture/drawing.ts';
import { boundsOf } from '#engine/picture/point.ts';
import { type Placed, type Work, noWork } from '#engine/picture/work.ts';
import { card, smallWall } from './small-wall.ts';

const draw = (sequence: Sequence, placed: readonly Placed[], more: Partial<Work> = {}): Drawing =>
  drawWall(sequence, { ...noWork, placed, ...more });

const shapesOf = ({ views }: Drawing, view: ViewId, part: string): readonly Shape[] =>
  views.find(({ id }) => id === view)!.shapes.filter((shape) => shape.part === part);

const named = (shapes: readonly Shape[], name: string): readonly Shape[] =>
  shapes.filter(({ id }) => id.split('.').slice(3).join('.').startsWith(name));

const frame = (shapes: readonly Shape[]) => boundsOf(shapes.flatMap(({ points }) => points));

const plain = smallWall({
  line: [['snap-line', 'top-edge', ['height']]],
  prime: [
    ['primer', 'wall'],
    ['primer', 'shelf'],
  ],
  tape: [['tape', 'top-edge']],
  hang: [['membrane', 'wall', ['release']]],
  carry: [
    ['membrane', 'transition'],
    ['membrane', 'shelf', ['setback']],
  ],
  roll: [['rolled', 'wall']],
  mastic: [['mastic', 'toe', ['setback']]],
  press: [['rolled', 'toe']],
  bar: [
    ['bar', 'top-edge'],
    ['fasteners', 'top-edge', ['spacing']],
  ],
  barrier: [['weather-barrier', 'top-edge', ['lap']]],
});
const all = ['line', 'prime', 'tape', 'hang', 'carry', 'roll', 'mastic', 'press', 'bar', 'barrier'];

describe('truth', () => {
  it('shows nothing but the bare wall, with its letters, before anything is done', () => {
    const { parts } = draw(plain, []);
    expect(parts.length).toBeGreaterThan(3);
    expect(parts.filter(({ card: by }) => by !== undefined)).toEqual([]);
    expect(parts.slice(0, 3).map(({ mark }) => mark)).toEqual(['A', 'B', 'C']);
  });

  it.each([4, 6, 8, 14])('turns a sheet up %i in where the line was snapped there', (height) => {
    const drawing = draw(plain, [card('line', { height: [height, 'in'] }), card('hang')]);
    expect(frame(shapesOf(drawing, 'section', 'hang:membrane')).top).toBeCloseTo(height, 9);
  });

  it('turns up as the data sheet recommends where no line was snapped', () => {
    const drawing = draw(plain, [card('hang')]);
    expect(frame(shapesOf(drawing, 'section', 'hang:membrane')).top).toBeCloseTo(8, 9);
  });

  it.each([
    [7, 4],
    [14, 2],
  ])('puts fasteners %i in apart: %i in a run of 28 in', (spacing, count) => {
    const drawing = draw(plain, [card('bar', { spacing: [spacing, 'in'] })]);
    const heads = named(shapesOf(drawing, 'run', 'bar:fasteners'), 'head');
    expect(heads).toHaveLength(count);
    const centres = heads.map((head) => {
      const { left, right } = frame([head]);
      return (left + right) / 2;
    });
    expect(centres[1]! - centres[0]!).toBeCloseTo(spacing, 9);
  });

  it('inks primer wet until it has dried', () => {
    const fill = (state: Placed['state']) =>
      shapesOf(draw(plain, [card('prime', {}, state)]), 'section', 'prime:primer')[0]!.paint.fill;
    expect(fill('wet')).toBe('primer-wet');
    expect(fill('dry')).toBe('primer-dry');
    const { parts } = draw(plain, [card('prime', {}, 'wet')]);
    expect(parts.find(({ id }) => id === 'prime:primer')!.notes[0]!.en).toBe('still wet');
  });

  it('lays what comes later on what was there', () => {
    const right = draw(plain, [card('tape'), card('hang')]);
    const wrong = draw(plain, [card('hang'), card('tape')]);
    const outermost = (drawing: Drawing, part: string) =>
      frame(shapesOf(drawing, 'section', part)).right;
    expect(outermost(right, 'hang:membrane')).toBeGreaterThan(outermost(right, 'tape:tape'));
    expect(outermost(wrong, 'tape:tape')).toBeGreaterThan(
      frame(named(shapesOf(wrong, 'section', 'hang:membrane'), 'body')).right,
    );
  });

  it('hangs the rest of the sheet loose until it is carried down', () => {
    const loose = (cards: readonly Placed[]) =>
      named(shapesOf(draw(plain, cards), 'section', 'hang:membrane'), 'loose').length;
    expect(loose([card('hang')])).toBe(1);
    expect(loose([card('hang'), card('carry')])).toBe(0);
  });

  it('shows air under a sheet until it is rolled', () => {
    const reach = (cards: readonly Placed[]) =>
      frame(named(shapesOf(draw(plain, cards), 'section', 'hang:membrane'), 'body')).right;
    expect(reach([card('hang')])).toBeGreaterThan(reach([card('hang'), card('roll')]) + 0.05);
  });

  it('bridges the transition when the sheet was never pushed into it', () => {
    const apart = smallWall({
      hang: [['membrane', 'wall']],
      push: [['membrane', 'transition']],
      carry: [['membrane', 'shelf']],
    });
    const gap = (cards: readonly Placed[]) => {
      const drawing = draw(apart, cards);
      const points = cards.flatMap(({ card: by }) =>
        shapesOf(drawing, 'section', `${by}:membrane`).flatMap((shape) => shape.points),
      );
      return Math.min(...points.map(([x, y]) => Math.hypot(x, y)));
    };
    expect(gap([card('hang'), card('push'), card('carry')])).toBeCloseTo(0, 6);
    expect(gap([card('hang'), card('carry')])).toBeGreaterThan(0.3);
  });

  it('slips mastic under a loose toe, and leaves it on a pressed one', () => {
    const top = (cards: readonly string[]) =>
      frame(
        named(
          shapesOf(
            draw(
              plain,
              cards.map((id) => card(id)),
            ),
            'section',
            'mastic:mastic',
          ),
          'body',
        ),
      ).bottom;
    expect(top(['hang', 'carry', 'mastic', 'press'])).toBeCloseTo(0, 6);
    expect(top(['hang', 'carry', 'press', 'mastic'])).toBeGreaterThan(0.1);
  });

  it('covers the tape with its release paper until the sheet is on it', () => {
    const fill = (cards: readonly Placed[]) =>
      shapesOf(draw(plain, cards), 'run', 'tape:tape')[0]!.paint.fill;
    expect(fill([card('tape')])).toBe('release-paper');
    expect(fill([card('tape'), card('hang')])).toBe('tape');
  });

  it('pulls the paper at the angle that was set, while that is what was done last', () => {
    const paper = (cards: readonly Placed[]) =>
      named(shapesOf(draw(plain, cards), 'section', 'hang:membrane'), 'paper');
    const [strip] = paper([card('hang', { release: [90, '°'] })]);
    const { top, bottom } = frame([strip!]);
    expect(top - bottom).toBeLessThan(0.4);
    expect(paper([card('hang', { release: [90, '°'] }), card('carry')])).toEqual([]);
  });

  it('shows bar and fasteners as hidden lines behind the weather barrier', () => {
    const hidden = (cards: readonly Placed[]) =>
      shapesOf(draw(plain, cards), 'run', 'bar:bar').filter(({ paint }) => paint.dash === 'hidden');
    expect(hidden([card('bar')])).toEqual([]);
    expect(hidden([card('bar'), card('barrier')]).length).toBeGreaterThan(0);
  });

  it('marks a card that spoils a joint with a cross where the joint is, and a fault as one', () => {
    const faults = [{ card: 'nail-toe', severity: 'critical' as const }];
    const drawing = draw(plain, [card('hang'), card('nail-toe')], { faults });
    const cross = shapesOf(drawing, 'section', 'nail-toe:mark');
    expect(cross).toHaveLength(2);
    expect(frame(cross).left).toBeGreaterThan(3);
    const part = drawing.parts.find(({ id }) => id === 'nail-toe:mark')!;
    expect([part.name.en, part.fault]).toEqual(['Nail the toe', 'critical']);
  });

  it('draws what was left out as it should have been, not there', () => {
    const faults = [{ card: 'mastic', severity: 'critical' as const }];
    const drawing = draw(plain, [card('hang'), card('carry')], { faults });
    const missing = shapesOf(drawing, 'section', 'mastic:mastic');
    expect(missing.map(({ paint }) => paint.dash)).toEqual(['ghost']);
    const part = drawing.parts.find(({ id }) => id === 'mastic:mastic')!;
    expect([part.fault, part.notes[0]!.en]).toEqual(['critical', 'left out']);
  });

  it('outlines where the sheet will lie only where that is asked for', () => {
    const ghosts = (ghost: boolean, cards: readonly Placed[]) =>
      shapesOf(draw(plain, cards, { ghost }), 'section', 'ghost').length;
    expect(ghosts(false, [])).toBe(0);
    expect(ghosts(true, [])).toBe(3);
    expect(ghosts(true, [card('hang'), card('carry')])).toBe(0);
  });

  it('names the site for the title block', () => {
    const sequence = smallWall({}, { site: { backing: 'concrete-masonry' } });
    expect(draw(sequence, []).facts.map(({ value }) => value.en)).toEqual(['concrete-masonry']);
    expect(draw(sequence, []).parts.map(({ id }) => id)).toContain('block');
  });

  it('numbers the parts in the order in which their cards were placed', () => {
    const { parts } = draw(plain, [card('tape'), card('line'), card('hang')]);
    expect(parts.flatMap(({ id, mark, card: by }) => (by ? [`${mark} ${id}`] : []))).toEqual([
      '1 tape:tape',
      '2 line:snap-line',
      '3 hang:membrane',
    ]);
  });
});

describe('a seam', () => {
  const seamed = smallWall({
    hang: [
      ['membrane', 'wall'],
      ['membrane', 'shelf'],
    ],
    tape: [['tape', 'seam']],
    over: [['membrane', 'seam', ['lap']]],
    pull: [['bare-tape', 'seam']],
    press: [['pressed', 'seam']],
    roll: [['rolled', 'seam']],
  });
  const cards = ['hang', 'tape', 'over', 'pull', 'press', 'roll'].map((id) => card(id));
  const mouths = (done: readonly Placed[]) =>
    named(shapesOf(draw(seamed, done), 'run', 'over:membrane'), 'mouth').length;

  it('stands open in fishmouths until it is pressed and rolled', () => {
    expect(mouths(cards.slice(0, 3))).toBe(2);
    expect(mouths(cards.slice(0, 5))).toBe(2);
    expect(mouths(cards)).toBe(0);
    expect(mouths(cards.filter(({ card: by }) => by !== 'press'))).toBe(2);
  });

  it('keeps its release paper until that is pulled', () => {
    const papers = (done: number) =>
      named(shapesOf(draw(seamed, cards.slice(0, done)), 'seam', 'tape:tape'), 'paper').length;
    expect([papers(2), papers(3), papers(4)]).toEqual([1, 1, 0]);
  });

  it.each([rational(1, 2), rational(3), rational(8)])('laps by what was set', (lap) => {
    const drawing = draw(seamed, [card('hang'), card('over', { lap: [lap, 'in'] })]);
    const sheet = frame(named(shapesOf(drawing, 'seam', 'over:membrane'), 'body'));
    const under = frame(named(shapesOf(drawing, 'seam', 'hang:membrane'), 'body'));
    const inches = Number(lap.n) / Number(lap.d);
    expect(under.right - sheet.left).toBeCloseTo(inches, 9);
  });
});

describe('a face that nobody cleaned', () => {
  const dirty = smallWall({
    clean: [
      ['clean-face', 'wall'],
      ['clean-face', 'shelf'],
    ],
    hang: [['membrane', 'wall']],
  });
  const fins = (cards: readonly string[]) =>
    shapesOf(
      draw(
        dirty,
        cards.map((id) => card(id)),
      ),
      'section',
      'debris',
    ).length;

  it('shows what stands on it, also when it is cleaned too late', () => {
    expect(fins([])).toBeGreaterThan(2);
    expect(fins(['clean'])).toBe(0);
    expect(fins(['hang', 'clean'])).toBeGreaterThan(1);
  });
});

describe('a window sill', () => {
  const sill = smallWall(
    {
      slope: [['slope', 'shelf', ['slope']]],
      dam: [['back-dam', 'wall', ['height']]],
      pan: [['membrane', 'shelf']],
      up: [
        ['membrane', 'wall'],
        ['end-dam', 'jambs', ['height']],
      ],
      front: [['membrane', 'front-edge', ['lap']]],
    },
    { assembly: 'window-sill' },
  );

  it('falls to the outside by the slope that was set', () => {
    const drawing = draw(sill, [card('slope', { slope: [12, '%'] })]);
    const { top, left, right } = frame(shapesOf(drawing, 'section', 'slope:slope'));
    expect(top / (right - left)).toBeCloseTo(0.12, 9);
  });

  it('stands the dam on the slope, as high as it was set', () => {
    const cards = [card('slope', { slope: [6, '%'] }), card('dam', { height: [2, 'in'] })];
    const drawing = draw(sill, cards);
    const slope = frame(shapesOf(drawing, 'section', 'slope:slope'));
    expect(frame(shapesOf(drawing, 'section', 'dam:back-dam')).top - slope.top).toBeCloseTo(2, 9);
  });

  it('turns the pan down over the front by its lap', () => {
    const cards = [card('pan'), card('front', { lap: [3, 'in'] })];
    const { bottom } = frame(shapesOf(draw(sill, cards), 'section', 'front:membrane'));
    expect(bottom).toBeCloseTo(-3, 9);
  });
});

describe('a corner', () => {
  const corner = smallWall(
    {
      prime: [
        ['primer', 'wall'],
        ['primer', 'shelf'],
      ],
      piece: [['corner-piece', 'corner']],
      laps: [['tape', 'corner', ['lap']]],
      first: [['membrane', 'wall']],
      second: [['membrane', 'second-side']],
      roll: [['rolled', 'corner']],
      bar: [['fasteners', 'top-edge', ['spacing']]],
    },
    { site: { corner: 'outside' } },
  );

  it('primes both sides and hangs a sheet from each', () => {
    const drawing = draw(corner, [card('prime'), card('piece'), card('first'), card('second')]);
    const primer = frame(shapesOf(drawing, 'run', 'prime:primer'));
    expect(primer.left).toBeCloseTo(-primer.right, 6);
    expect(frame(shapesOf(drawing, 'run', 'first:membrane')).right).toBeLessThan(0);
    expect(frame(shapesOf(drawing, 'run', 'second:membrane')).left).toBeGreaterThan(0);
  });

  it('keeps lengths along the wall true on both sides', () => {
    const drawing = draw(corner, [card('bar', { spacing: [7, 'in'] })]);
    const heads = named(shapesOf(drawing, 'run', 'bar:fasteners'), 'head').map((head) => {
      const { left, right, top, bottom } = frame([head]);
      return [(left + right) / 2, (top + bottom) / 2] as const;
    });
    expect(Math.hypot(heads[1]![0] - heads[0]![0], heads[1]![1] - heads[0]![1])).toBeCloseTo(7, 9);
  });
});

describe('every card of the plain wall', () => {
  it('adds a part of its own', () => {
    const { parts } = draw(
      plain,
      all.map((id) => card(id)),
    );
    const cards = new Set(parts.flatMap(({ card: by }) => by ?? []));
    expect([...cards]).toEqual(all);
  });
});
