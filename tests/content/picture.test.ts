import { describe, expect, it } from 'vitest';
import type { Quantity } from '#engine/measure/quantity.ts';
import { isA } from '#engine/measure/quantity.ts';
import type { SettingId } from '#engine/method/method.ts';
import { choicesOf } from '#engine/method/offered.ts';
import { middleOf } from '#engine/method/rule.ts';
import type { Ask, Sequence, SequenceStep } from '#engine/method/sequence.ts';
import { overlap } from '#engine/picture/box.ts';
import { partOf } from '#engine/picture/applied.ts';
import { drawWall } from '#engine/picture/draw-wall.ts';
import type { Drawing } from '#engine/picture/drawing.ts';
import { layOut } from '#engine/picture/lay-out.ts';
import { drawn } from '#engine/picture/measures.ts';
import { balloon } from '#engine/picture/place-keynotes.ts';
import { distance } from '#engine/picture/point.ts';
import { waterPath } from '#engine/picture/water-path.ts';
import { type Placed, noWork } from '#engine/picture/work.ts';
import { type Random, pick, randomFrom, shuffle } from '#engine/random.ts';
import { walls } from './walls.ts';

type Choose = (ask: Ask) => Quantity;

const recommended: Choose = ({ rule, sheetNumber }) => sheetNumber.aim ?? middleOf(rule);

const anyOf =
  (random: Random): Choose =>
  (ask) =>
    ask.sheetNumber.entry ? pick(random, choicesOf(ask.sheetNumber.entry)) : recommended(ask);

const placed = (step: SequenceStep, choose: Choose = recommended): Placed => ({
  card: step.id,
  settings: new Map(step.asks.map((ask) => [ask.id, choose(ask)])),
  state: 'dry',
});

const drawnAfter = (sequence: Sequence, cards: readonly Placed[]): Drawing =>
  drawWall(sequence, { ...noWork, placed: cards });

const finished = (sequence: Sequence, choose?: Choose): Drawing =>
  drawnAfter(
    sequence,
    sequence.steps.map((step) => placed(step, choose)),
  );

const partsShown = ({ views }: Drawing) =>
  new Set(views.flatMap(({ shapes }) => shapes.map(({ part, zone }) => `${part} ${zone}`)));

const usual = walls.filter(({ sequence: { method, site } }) =>
  method.site.every(({ id, values }) => values[0]?.id === site[id]),
);

/** Sequences that differ in what is drawn: the weather is not. */
const drawnApart = walls.filter(({ sequence: { method, site } }) =>
  method.site.every(({ id, values }) => id !== 'weather' || values[0]?.id === site[id]),
);

describe('laws', () => {
  it.each(drawnApart)('shows every layer of every step where it is put: $name', ({ sequence }) => {
    const cards = sequence.steps.map((step) => placed(step));
    const shown = partsShown(drawnAfter(sequence, cards));
    const named = sequence.steps.flatMap(({ id, draws }) =>
      draws.map(({ layer, zone }) => `${partOf(id, layer)} ${zone}`),
    );
    expect(named.filter((one) => !shown.has(one))).toEqual([]);
  });

  it.each(drawnApart)('draws nothing before it is done: $name', ({ sequence }) => {
    for (const done of sequence.steps.keys()) {
      const cards = sequence.steps.slice(0, done).map((step) => placed(step));
      const { parts } = drawnAfter(sequence, cards);
      const ids = new Set(cards.map(({ card }) => card));
      expect(parts.filter(({ card }) => card !== undefined && !ids.has(card))).toEqual([]);
    }
  });

  it.each(drawnApart)('draws lengths as long as they were set: $name', ({ name, sequence }) => {
    const random = randomFrom(name);
    for (let attempt = 0; attempt < 5; attempt += 1) {
      const set = new Map<string, Quantity>();
      const cards = sequence.steps.map((step) => placed(step, anyOf(random)));
      cards.forEach(({ card, settings }) =>
        settings.forEach((value, setting) => set.set(`${card} ${setting}`, value)),
      );
      for (const { id, dimensions } of drawnAfter(sequence, cards).views) {
        for (const { part, setting, from, to, away } of dimensions) {
          const value = set.get(`${part.split(':')[0]} ${setting}`)!;
          if (!away) continue;
          expect(distance(from, to), `${id} ${part} ${setting}`).toBeCloseTo(drawn(value), 9);
        }
      }
    }
  });

  it.each(drawnApart)('writes every setting that a layer takes: $name', ({ sequence }) => {
    const cards = sequence.steps.map((step) => placed(step));
    sequence.steps.forEach(({ id, draws }, place) => {
      const { views } = drawnAfter(sequence, cards.slice(0, place + 1));
      const written = new Set(
        views.flatMap(({ dimensions }) =>
          dimensions.map(({ part, measure }) => `${part} ${measure}`),
        ),
      );
      const takes = draws.flatMap(({ layer, takes }) =>
        [...takes.keys()].map((measure) => `${partOf(id, layer)} ${measure}`),
      );
      expect(takes.filter((one) => !written.has(one))).toEqual([]);
    });
  });

  it.each(drawnApart)('sets no text and no balloon over another: $name', ({ name, sequence }) => {
    const random = randomFrom(name);
    const drawing = finished(sequence, anyOf(random));
    for (const width of [300, 328, 700]) {
      for (const view of drawing.views) {
        const { dimensions, keynotes } = layOut(drawing, view, width, 'es');
        const labels = dimensions.map(({ label }) => label);
        for (const [at, label] of labels.entries()) {
          expect(labels.slice(0, at).filter((other) => overlap(label, other))).toEqual([]);
        }
        for (const [at, { centre }] of keynotes.entries()) {
          const near = keynotes
            .slice(0, at)
            .filter((other) => distance(other.centre, centre) < 2 * balloon);
          expect(near, `${view.id} at ${width}`).toEqual([]);
        }
      }
    }
  });

  it.each(drawnApart)('keeps its frame while the wall is built: $name', ({ sequence }) => {
    const frames = [0, Math.floor(sequence.steps.length / 2), sequence.steps.length].map((done) =>
      drawnAfter(
        sequence,
        sequence.steps.slice(0, done).map((step) => placed(step)),
      ).views.map(({ bounds }) => bounds),
    );
    expect(frames[1]).toEqual(frames[0]);
    expect(frames[2]).toEqual(frames[0]);
  });

  it.each(drawnApart)('draws the same work in the same way: $name', ({ sequence }) => {
    expect(finished(sequence)).toEqual(finished(sequence));
  });

  it.each(usual)('draws cards in any order, again, and of other walls: $name', (wall) => {
    const { sequence } = wall;
    const random = randomFrom(`any order ${wall.name}`);
    const strays = sequence.strays.map((stray): Placed => ({
      card: stray.kind === 'decoy' ? stray.decoy.id : stray.step.id,
      settings: new Map(),
      state: 'dry',
    }));
    for (let attempt = 0; attempt < 12; attempt += 1) {
      const cards = shuffle(random, [
        ...sequence.steps.map((step) => placed(step, anyOf(random))),
        ...sequence.steps.slice(0, 3).map((step) => placed(step, anyOf(random))),
        ...strays,
      ]);
      const { views } = drawnAfter(sequence, cards);
      const numbers = views.flatMap(({ shapes }) => shapes.flatMap(({ points }) => points.flat()));
      expect(numbers.every(Number.isFinite)).toBe(true);
      const ids = views.map(({ shapes }) => new Set(shapes.map(({ id }) => id)).size);
      expect(ids).toEqual(views.map(({ shapes }) => shapes.length));
    }
  });

  it.each(drawnApart)(
    'tells every mark and shape apart, also of what was left out: $name',
    (wall) => {
      const { sequence } = wall;
      const spoilt = sequence.method.decoys.map(({ id }): Placed => ({
        card: id,
        settings: new Map(),
        state: 'dry',
      }));
      const faults = sequence.steps.map(({ id, severity }) => ({ card: id, severity }));
      const { parts, views } = drawWall(sequence, { placed: spoilt, faults, ghost: true });
      const draw = new Set(
        sequence.steps.flatMap(({ id, draws }) => (draws.length > 0 ? [id] : [])),
      );
      expect(new Set(parts.flatMap(({ card, fault }) => (fault ? [card] : [])))).toEqual(draw);
      for (const { shapes, keynotes } of views) {
        expect(new Set(shapes.map(({ id }) => id)).size).toBe(shapes.length);
        expect(new Set(keynotes.map(({ part }) => part)).size).toBe(keynotes.length);
      }
    },
  );

  it.each(drawnApart)('knows where each joint runs: $name', ({ sequence }) => {
    const drawing = finished(sequence);
    for (const { zone } of sequence.joints) {
      expect(waterPath(drawing, [zone])[0]?.line.length, zone).toBeGreaterThan(1);
    }
  });

  it('gives every length setting of a layer a length, and every angle its own', () => {
    for (const { sequence } of usual) {
      for (const { asks, draws } of sequence.steps) {
        for (const [measure, setting] of draws.flatMap(({ takes }) => [...takes])) {
          const ask = asks.find(({ id }) => id === (setting as SettingId))!;
          const value = recommended(ask);
          expect(isA(value, 'angle'), setting).toBe(measure === 'release');
        }
      }
    }
  });
});
