import { describe, expect, it } from 'vitest';
import { languages } from '#engine/text.ts';
import { job, verdictOn } from './shipped.ts';

const told = (...[instance, id, text]: Parameters<typeof verdictOn>) => {
  const { kind, slips } = verdictOn(instance, id, text);
  return [kind, ...slips.map(({ id }) => id)];
};

// 100 ft of 1/2 x 1/4 are 150 in³; with 10 % in 10.1 oz cartridges 9.052, so 10.
const bead = job('lap-sealant', { run: '100 ft', width: '1/2 in', depth: '1/4 in' });
// 81 ft in sheets of 10 ft with 2 in laps: 8.220, so 9; 8 seams; 82 ft 4 in.
const wall = job('sheets-straight-run', { run: '81 ft', sheet: '10 ft' });
const yields = job('bead-yield', {
  package: '10.1 fl oz',
  width: '1/4 in',
  depth: '1/4 in',
  run: '100 ft',
});

describe('a count that rounds up', () => {
  it.each([
    ['10', ['right']],
    ['10 cartridges', ['right']],
    ['9', ['slip', 'waste-forgotten']],
    ['9.05', ['badly-rounded']],
    ['9.1', ['badly-rounded']],
    ['10.5', ['wrong']],
    ['5', ['slip', 'twice-the-yield']],
    ['17', ['slip', 'ounces-as-cubic-inches']],
    ['200', ['wrong']],
    ['10 ft', ['wrong-unit']],
  ])('%s is %j', (text, wanted) => {
    expect(told(bead, 'cartridges', text)).toEqual(wanted);
  });
});

describe('a measure that rounds to the nearest', () => {
  it.each([
    ['150', ['right']],
    ['150 in3', ['right']],
    ['149.96', ['right']],
    ['150.2', ['badly-rounded']],
    ['75', ['slip', 'half-of-it']],
    ['117.8', ['slip', 'round-bead']],
    ['12.5', ['wrong-unit']],
    ['150 in2', ['wrong-unit']],
    ['150 fl oz', ['wrong-unit']],
    ['2458 mL', ['right']],
    ['163', ['wrong']],
  ])('%s is %j', (text, wanted) => {
    expect(told(bead, 'volume', text)).toEqual(wanted);
  });

  it('feet and inches mixed up are told by their factor', () => {
    expect(verdictOn(bead, 'volume', '12.5').say.en).toContain('off by just 12');
    expect(verdictOn(yields, 'yield', '291.6').say.en).toContain('its unit is “in”, not “ft”');
  });

  it('a finer answer than asked is right, a coarser one badly rounded', () => {
    expect(told(yields, 'yield', '24.302 ft')).toEqual(['right']);
    expect(told(yields, 'yield', '24 ft')).toEqual(['wrong']);
    expect(told(yields, 'yield', '24.35')).toEqual(['right']);
    expect(told(yields, 'yield', '24.4 ft')).toEqual(['badly-rounded']);
  });
});

describe('a length', () => {
  it.each([
    [`82'-4"`, ['right']],
    ['988 in', ['right']],
    ['25.095 m', ['right']],
    [`82'-4 1/8"`, ['badly-rounded']],
    [`82'-6"`, ['slip', 'lap-too-many']],
    [`79'-8"`, ['slip', 'laps-taken-off']],
    ['90 ft', ['slip', 'whole-sheets']],
    ['82.4 ft', ['slip', 'inches-as-tenths']],
    ['82.04 ft', ['slip', 'inches-as-tenths']],
    ['988 ft', ['wrong-unit']],
    ['82.333 in', ['wrong-unit']],
    ['90 ft2', ['wrong-unit']],
    ['70 ft', ['wrong']],
  ])('%s is %j', (text, wanted) => {
    expect(told(wall, 'length', text)).toEqual(wanted);
  });

  it('a quarter taken for a decimal is a slip', () => {
    const sill = job('sheet-girth', {
      'turn-up': '8 in',
      fold: '1/2 in',
      shelf: '5 in',
      edge: 'yes',
    });
    // 8 + 1/2 + 5 + 1/4 = 13 3/4 in.
    expect(told(sill, 'girth', '13 3/4 in')).toEqual(['right']);
    expect(told(sill, 'girth', '13.75 in')).toEqual(['right']);
    expect(told(sill, 'girth', '13.34 in')).toEqual(['slip', 'fraction-as-decimal']);
    expect(told(sill, 'girth', '13.4 in')).toEqual(['slip', 'fraction-as-decimal']);
  });
});

describe('what is said', () => {
  const cases = [
    [bead, 'cartridges', '10'],
    [bead, 'cartridges', '9.05'],
    [bead, 'cartridges', '5'],
    [bead, 'cartridges', '10 ft'],
    [bead, 'cartridges', '70'],
    [bead, 'volume', '12.5'],
    [bead, 'volume', '150.2'],
    [bead, 'volume', '150 fl oz'],
    [bead, 'volume', '90'],
    [wall, 'length', '82.4 ft'],
    [wall, 'length', `82'-4 1/8"`],
  ] as const;

  it.each(cases)('is a whole sentence in every language (%#)', (instance, id, text) => {
    const { say } = verdictOn(instance, id, text);
    for (const language of languages) expect(say[language]).toMatch(/^\S.*\.$/);
    expect(say.es).not.toBe(say.en);
  });

  it.each(cases.slice(1))('tells what to do without the answer (%#)', (instance, id, text) => {
    const { say } = verdictOn(instance, id, text);
    expect(say.en).not.toMatch(/\b(10 cartridges|150 in³|82'-4"(?!\d))/);
    expect(say.en.length).toBeGreaterThan(20);
  });

  it('fills in the numbers of the data sheet', () => {
    expect(verdictOn(bead, 'cartridges', '9').say.en).toContain('Add 10 % to the volume first.');
  });

  it('a bad rounding says which way to go', () => {
    expect(verdictOn(bead, 'cartridges', '9.05').say.en).toContain('round up');
    expect(verdictOn(wall, 'length', `82'-4 1/8"`).say.en).toContain(
      'Round to the nearest 1/16 in',
    );
    expect(verdictOn(yields, 'yield', '24.4 ft').say.es).toContain('0.1 pies');
  });
});

describe('a decision', () => {
  const cold = job('dew-point', { air: '70 °F', 'dew-point': '50 °F', surface: '53 °F' });

  it('is right or wrong, and a known slip where one leads there', () => {
    expect(told(cold, 'go', 'no')).toEqual(['right']);
    expect(told(cold, 'go', 'yes')).toEqual(['slip', 'by-the-air', 'dew-point-only']);
  });

  it('asks for a decision where an amount is written', () => {
    const warm = job('dew-point', { air: '70 °F', 'dew-point': '50 °F', surface: '60 °F' });
    expect(told(warm, 'go', 'no')).toEqual(['wrong']);
  });
});
