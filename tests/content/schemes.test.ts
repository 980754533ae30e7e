import { describe, expect, test } from 'vitest';
import { compare } from '#engine/measure/arithmetic.ts';
import { quantity } from '#engine/measure/conversion.ts';
import { addPeriod, isoDateFrom } from '#engine/calendar.ts';
import { usualCap } from '#engine/exam/bank.ts';
import { renewalParts, type Scheme } from '#engine/exam/scheme.ts';
import { siteFrom } from '#engine/method/site.ts';
import type { TopicId } from '#engine/written/question.ts';
import { content } from './walls.ts';

const schemes: readonly Scheme[] = [...content.schemes.values()];
const total = (blueprint: ReadonlyMap<string, number>): number =>
  [...blueprint.values()].reduce((sum, count) => sum + count, 0);

describe('truth', () => {
  test('three schemes are shipped, and each requires those that lead to it', () => {
    expect(schemes.map(({ id, requires }) => [id, [...requires]])).toEqual([
      ['base-of-wall-installer', []],
      ['corners-and-seams', ['base-of-wall-installer']],
      ['crew-lead', ['base-of-wall-installer', 'corners-and-seams']],
    ]);
  });

  test('each says in both languages that licensed practice governs and nobody is accredited', () => {
    for (const { note } of schemes) {
      expect(note.en).toMatch(/Licensed practice.*local code.*accredits nobody/s);
      expect(note.es).toMatch(
        /práctica profesional autorizada.*código local.*no acredita a nadie/s,
      );
    }
  });

  // ISO/IEC 17024:2012, 5.2: two years; from memory.
  test('who trained a candidate does not examine them for two years', () => {
    const start = isoDateFrom('2026-01-31');
    if (!start.ok) throw new Error(start.error);
    for (const { separation } of schemes) {
      expect(addPeriod(start.value, separation.trainedExamines)).toBe('2028-01-31');
    }
  });
});

describe('laws', () => {
  test('each examines by questions, computing, a mock-up and real work', () => {
    for (const { parts } of schemes) {
      expect(new Set(parts.map(({ kind }) => kind))).toEqual(
        new Set(['written', 'takeoff', 'mock-up', 'hands-on']),
      );
    }
  });

  test('every hands-on check is of a wall that the method can build', () => {
    for (const part of schemes.flatMap(({ parts }) => parts)) {
      if (part.kind !== 'hands-on') continue;
      const method = content.methods.get(part.method)!;
      const site = siteFrom(method.site, part.site);
      expect(site.ok && Object.keys(site.value)).toHaveLength(method.site.length);
    }
  });

  test('a renewal is less than the whole, and its questions are fewer', () => {
    for (const scheme of schemes) {
      const again = renewalParts(scheme);
      expect(again.length).toBeGreaterThan(0);
      expect(again.length).toBeLessThan(scheme.parts.length);
      for (const part of again) {
        const whole = scheme.parts.find(({ id }) => id === part.id)!;
        if (part.kind !== 'written' || whole.kind !== 'written') continue;
        expect(total(part.blueprint)).toBeLessThan(total(whole.blueprint));
      }
    }
  });

  test('the bank goes on giving forms, and never has to hold one back for being seen', () => {
    for (const part of schemes.flatMap(({ parts }) => parts)) {
      if (part.kind !== 'written') continue;
      for (const [topic, count] of part.blueprint) {
        const there = content.topics.get(topic as TopicId)?.questions.length ?? 0;
        expect(there, topic).toBeGreaterThanOrEqual(count * (1 + 1 / usualCap));
      }
    }
  });

  test('a question has a minute or more, and a problem five', () => {
    for (const part of schemes.flatMap(({ parts }) => parts)) {
      const least =
        part.kind === 'written'
          ? quantity(total(part.blueprint), 'min')
          : part.kind === 'takeoff'
            ? quantity(5 * part.count, 'min')
            : quantity(0, 'min');
      expect(compare(part.time, least)).toBeGreaterThanOrEqual(0);
    }
  });
});
