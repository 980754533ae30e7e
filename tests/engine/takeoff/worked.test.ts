import { describe, expect, it } from 'vitest';
import type { PartId } from '#engine/takeoff/family.ts';
import { workedSolution } from '#engine/takeoff/worked.ts';
import { job } from './shipped.ts';

const lines = (instance: ReturnType<typeof job>, id: string, language: 'en' | 'es' = 'en') =>
  workedSolution(instance, id as PartId).map(({ kind, text }) => `${kind}: ${text[language]}`);

const wall = job('sheets-straight-run', { run: '81 ft', sheet: '10 ft' });
const bead = job('lap-sealant', { run: '100 ft', width: '1/2 in', depth: '1/4 in' });

describe('truth', () => {
  it('puts the numbers in, works down to the result and rounds', () => {
    expect(lines(wall, 'sheets').slice(1)).toEqual([
      'words: (Run of the wall − Lap of two sheets) ÷ (Length of a sheet − Lap of two sheets)',
      `numbers: = (81'-0" − 2") ÷ (10'-0" − 2")`,
      `step: = 80'-10" ÷ 9'-10"`,
      'step: ≈ 8.22',
      'round: → rounded up: 9 sheets',
      'answer: Sheets: 9 sheets',
    ]);
  });

  it('says the same in Spanish', () => {
    expect(lines(wall, 'laps', 'es')).toEqual([
      'why: Cada junta queda entre dos tramos.',
      'words: Tramos de membrana − 1',
      'numbers: = 9 − 1',
      'step: = 8',
      'answer: Juntas: 8 juntas',
    ]);
  });

  it('converts first where the part wants other units', () => {
    expect(lines(bead, 'volume').slice(1)).toEqual([
      'words: Length of the bead × Width of the bead × Depth of the bead',
      `convert: 100'-0" = 1200 in`,
      'numbers: = 1200 in × 1/2 in × 1/4 in',
      'step: = 150 in³',
      'answer: Sealant in the bead: 150 in³',
    ]);
  });

  it('says which branch was taken and why', () => {
    const weeps = job('weeps-in-wall', { run: '33 ft', kind: 'wicks' });
    expect(lines(weeps, 'weeps')).toContain('since: Weeps: wicks');
    expect(lines(weeps, 'weeps')).toContain(`words: Run of the wall ÷ Wicks or tubes apart + 1`);
  });

  it('reads the chart: between rows in proportion, then times the factor', () => {
    const day = job('time-on-the-wall', {
      air: '70 °F',
      surface: '45 °F',
      humidity: '85 %',
      prime: '20 min',
      hang: '40 min',
      finish: '30 min',
    });
    expect(lines(day, 'drying').slice(1)).toEqual([
      'chart: Surface 45 °F: 5 min',
      'chart: Relative humidity 85 %: × 1.5',
      'numbers: = 7.5 min',
      'round: → rounded up: 8 min',
      'answer: Drying time: 8 min',
    ]);
  });

  it('a decision ends in a comparison', () => {
    const cold = job('dew-point', { air: '70 °F', 'dew-point': '50 °F', surface: '53 °F' });
    expect(lines(cold, 'go').slice(1)).toEqual([
      'words: Surface ≥ Least surface temperature and Surface ≥ Lowest working temperature',
      'numbers: = 53 °F ≥ 55 °F and 53 °F ≥ 40 °F',
      'answer: May the wall be primed: No, wait or warm the wall',
    ]);
  });

  it('brackets what is squared with its unit', () => {
    const angle = job('sealant-in-angle', { run: '100 ft', leg: '1/2 in' });
    expect(lines(angle, 'area')).toContain('numbers: = (1/2 in)² ÷ 2');
  });

  it('is refused for a part that there is not', () => {
    expect(() => workedSolution(wall, 'roof' as PartId)).toThrow(RangeError);
  });
});
