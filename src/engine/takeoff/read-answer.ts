import { commonDimension, type Dimension } from '#engine/measure/dimension.ts';
import type { MeasureFault } from '#engine/measure/fault.ts';
import type { Unit } from '#engine/measure/unit.ts';
import { ok, type Result } from '#engine/result.ts';
import type { Text } from '#engine/text.ts';
import type { Part } from './family.ts';
import { inEach } from './fill-text.ts';
import type { Amount } from './instance.ts';
import { writeAnswer } from './problem.ts';
import { readAmount, readYesOrNo } from './read-amount.ts';
import { usualStyle, writeQuantity, type Style } from './style.ts';

/** As much of a part as reading an answer to it takes. */
export type Writable = Pick<Part, 'answer'> & { readonly term: Pick<Part['term'], 'kind'> };

/** An answer as it was read. */
export type Reading = {
  readonly value: Amount;
  /** The unit it was written in, where it was a single one; none for feet and inches together. */
  readonly unit: Unit | undefined;
};

/** `picked` is the unit chosen beside the field; without it, the one that the part asks for. */
export function readAnswer(
  { answer, term }: Writable,
  text: string,
  picked?: Style,
): Result<Reading, MeasureFault> {
  if (answer.kind === 'quantity') {
    return readAmount(text, term.kind as Dimension, picked ?? answer.style);
  }
  const decision = readYesOrNo(answer, text);
  return decision.ok ? ok({ value: decision.value, unit: undefined }) : decision;
}

/** How an answer was read, for who wrote it: feet and inches also in inches. */
export const echo = ({ answer, term }: Writable, { value }: Reading): Text =>
  inEach((language) => {
    if (typeof value === 'boolean' || answer.kind === 'decision') {
      return writeAnswer(answer, value, language);
    }
    const isAsked = commonDimension(value.dimension, term.kind as Dimension) !== undefined;
    if (!isAsked) return writeQuantity(value, usualStyle(value), language, { honest: true });
    if (answer.called) return writeAnswer(answer, value, language);
    const ways = [answer.style, ...beside(answer.style)].map((style) =>
      writeQuantity(value, style, language, { honest: true }),
    );
    return [...new Set(ways)].join(' = ');
  });

const beside = (style: Style): readonly Style[] =>
  style === 'feet-inches'
    ? ['inches']
    : style === 'inches' || style === 'in'
      ? ['feet-inches']
      : [];

/** The units to pick from for a part, the asked one first. */
export function pickableUnits({ answer, term }: Writable): readonly Style[] {
  if (answer.kind === 'decision') return [];
  const others = picks[(term.kind as Dimension).name] ?? [];
  return [...new Set([answer.style, ...others])];
}

const picks: Partial<Record<Dimension['name'], readonly Style[]>> = {
  length: ['ft', 'in', 'm', 'mm'],
  area: ['ft2', 'in2', 'm2'],
  volume: ['fl oz', 'in3', 'gal', 'mL', 'L'],
  time: ['min', 'h'],
  temperature: ['°F', '°C'],
  'temperature-difference': ['F°', 'C°'],
};
