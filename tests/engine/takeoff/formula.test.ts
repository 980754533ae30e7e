import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Term } from '#engine/takeoff/formula.ts';
import { workOut } from '#engine/takeoff/slate.ts';
import { amount } from '#engine/takeoff/instance.ts';
import { byQuantities } from './by-quantities.ts';
import { exactly, formulaOf, q, same, slateFor, value, type Worth } from './worked-out.ts';

const faultOf = (text: string, worth: Worth = {}) => {
  const found = formulaOf(text, worth);
  if (found.ok) throw new Error(`${text} has no fault.`);
  return found.error.map(({ code, at, end }) => [code, text.slice(at, end)]);
};

const wall: Worth = { run: '60 ft', lap: '6 in', sheet: '10 ft', steel: true, air: '70 °F' };

describe('truth', () => {
  it.each([
    ['run - 2 * lap', '59 ft'],
    ['run-lap', '0', { 'run-lap': '0' }],
    ['(run - lap) / (sheet - lap)', '119/19'],
    ['ceil((run - lap) / (sheet - lap))', '7'],
    ['floor(7 / 2) + 2^3', '11'],
    ['round(lap * lap, "1 in2")', '36 in2'],
    ['ceil(lap / 4, "1 in")', '2 in'],
    ['-lap + run', '59 ft 6 in'],
    ['2 - -3', '5'],
    ['0.1 + 0.2', '3/10'],
    ['12345678901234567890 - 12345678901234567889', '1'],
    ['max(lap, sheet, "3 ft")', '10 ft'],
    ['min(lap, sheet)', '6 in'],
    ['if(steel, run, lap)', '60 ft'],
    ['if(not steel or run < lap, 1 / 0, 2)', '2'],
    ['"1 gal" / "1 in3"', '231'],
    ['air + "5 F°"', '75 °F'],
    ['air - "20 °F"', '50 F°'],
    ['10 - 2 - 3', '5'],
    ['2 * 3^2', '18'],
  ] as const)('%s is %s', (text, wanted, worth: Worth = wall) => {
    expect(exactly(value(text, worth))).toBe(same(wanted));
  });

  it.each([
    ['run > lap and lap >= "6 in"', true],
    ['run == "720 in"', true],
    ['run != "18.288 m"', false],
    ['air <= "21 °C"', false],
    ['not (lap < lap)', true],
  ] as const)('%s is %s', (text, wanted) => {
    expect(value(text, wall)).toBe(wanted);
  });

  it('pi is the ratio of the circle, off by less than 3e-11', () => {
    // 3.14159 26535 89793 23846 26433 ... (OEIS A000796)
    expect(
      value('max(pi - 3.14159265358979323846, 3.14159265358979323846 - pi) < 0.00000000003'),
    ).toBe(true);
  });
});

describe('a fault stands at its place', () => {
  it.each([
    ['run + lap * sheet', [['UNIT_MISMATCH', 'run + lap * sheet']]],
    ['1 + (run + lap * sheet)', [['UNIT_MISMATCH', '(run + lap * sheet)']]],
    ['if(run, 1, 2)', [['UNIT_MISMATCH', 'if(run, 1, 2)']]],
    ['air * 2', [['UNIT_MISMATCH', 'air * 2']]],
    ['air + air', [['UNIT_MISMATCH', 'air + air']]],
    ['ceil(run)', [['UNIT_MISMATCH', 'ceil(run)']]],
    ['round(run, 2)', [['UNIT_MISMATCH', 'round(run, 2)']]],
    ['steel + 1', [['UNIT_MISMATCH', 'steel + 1']]],
    ['steel and run', [['UNIT_MISMATCH', 'steel and run']]],
    ['max(steel, steel)', [['UNIT_MISMATCH', 'max(steel, steel)']]],
    ['run < 3', [['UNIT_MISMATCH', 'run < 3']]],
    ['run + "2 inn"', [['BAD_QUANTITY', 'inn']]],
    [
      'wall + run + lapp',
      [
        ['UNKNOWN_NAME', 'wall'],
        ['UNKNOWN_NAME', 'lapp'],
      ],
    ],
    ['abs(run)', [['UNKNOWN_FUNCTION', 'abs']]],
    ['if(steel, run)', [['WRONG_ARGUMENTS', 'if(steel, run)']]],
    ['ceil()', [['WRONG_ARGUMENTS', 'ceil()']]],
    ['run^lap', [['WRONG_ARGUMENTS', 'lap']]],
    ['2^(1 + 1)', [['WRONG_ARGUMENTS', '(1 + 1)']]],
    ['run lap', [['FORMULA_SYNTAX', 'run lap']]],
    ['2 run', [['FORMULA_SYNTAX', '2 run']]],
    ['2run', [['FORMULA_SYNTAX', '2']]],
    ['(run', [['FORMULA_SYNTAX', 'n']]],
    ['run +', [['FORMULA_SYNTAX', '+']]],
    ['run = 2', [['FORMULA_SYNTAX', '=']]],
    ['lap < run < sheet', [['FORMULA_SYNTAX', 'lap']]],
    ['Run', [['FORMULA_SYNTAX', 'R']]],
    ['run % 2', [['FORMULA_SYNTAX', '%']]],
    ['run; lap', [['FORMULA_SYNTAX', ';']]],
    ['run mod 2', [['FORMULA_SYNTAX', 'mod']]],
    ['"2 in', [['FORMULA_SYNTAX', '"']]],
    ['', [['FORMULA_SYNTAX', '']]],
    ['1e3', [['FORMULA_SYNTAX', '1']]],
    ['0x10', [['FORMULA_SYNTAX', '0']]],
    ['run(2)', [['UNKNOWN_FUNCTION', 'run']]],
  ] as const)('%s', (text, faults) => {
    expect(faultOf(text, wall)).toEqual(faults);
  });

  it('a large formula is refused before it is parsed', () => {
    expect(faultOf('1'.padEnd(401, '1'))).toEqual([['FORMULA_TOO_COSTLY', '1']]);
    expect(faultOf(`${'('.repeat(30)}1${')'.repeat(30)}`)[0]![0]).toBe('FORMULA_TOO_COSTLY');
    expect(faultOf(Array(80).fill('1').join('+'))[0]![0]).toBe('FORMULA_TOO_COSTLY');
  });

  it('a number that could become too large is refused', () => {
    expect(faultOf('((((run/run)^6)^6)^6)^6', wall)[0]![0]).toBe('FORMULA_TOO_COSTLY');
    expect(exactly(value('((2^6)^6)^6'))).toBe(exactly(q(String(2n ** 216n))));
  });
});

describe('laws', () => {
  const names = ['run', 'lap', 'sheet', 'steel', 'air', 'n'] as const;
  const worth: Worth = { ...wall, n: '7/3' };
  const text: fc.Arbitrary<string> = fc.letrec<{ formula: string }>((tie) => ({
    formula: fc.oneof(
      { maxDepth: 5, withCrossShrink: true },
      fc.constantFrom(...names, '2', '0.25', '"1 1/2 in"', '"2 F°"', '3'),
      fc
        .tuple(
          tie('formula'),
          fc.constantFrom('+', '-', '*', '/', '<', '>=', 'and', 'or'),
          tie('formula'),
        )
        .map(([a, op, b]) => `(${a} ${op} ${b})`),
      tie('formula').map((a) => `(${a})^2`),
      tie('formula').map((a) => `-(${a})`),
      tie('formula').map((a) => `not (${a})`),
      fc
        .tuple(fc.constantFrom('ceil', 'floor', 'round'), tie('formula'))
        .map(([call, a]) => `${call}(${a})`),
      fc.tuple(tie('formula'), tie('formula')).map(([a, b]) => `max(${a}, ${b})`),
      fc
        .tuple(tie('formula'), tie('formula'), tie('formula'))
        .map(([a, b, c]) => `if(${a}, ${b}, ${c})`),
    ),
  })).formula;

  it('whatever has a kind is worked out to just what the arithmetic of dimensions gives', () => {
    let compared = 0;
    fc.assert(
      fc.property(text, (formula) => {
        const found = formulaOf(formula, worth);
        if (!found.ok) return;
        const { root } = found.value;
        const lookup = (term: Term & { readonly name: string }) => {
          const known = worth[term.name]!;
          return typeof known === 'boolean' ? known : q(known);
        };
        const attempt = (make: () => string): string => {
          try {
            return make();
          } catch (error) {
            if (error instanceof RangeError) return 'no sense';
            throw error;
          }
        };
        const ours = attempt(() =>
          exactly(amount(workOut(root, slateFor(root, worth)), root.kind)),
        );
        expect(ours).toBe(attempt(() => exactly(byQuantities(root, lookup))));
        compared += 1;
      }),
      { numRuns: 4000, seed: 7 },
    );
    expect(compared).toBeGreaterThan(500);
  });

  it('equal parts of formulas are one term', () => {
    const found = formulaOf('(run - lap) / (run - lap)', wall);
    const root = found.ok ? found.value.root : undefined;
    expect(root && 'args' in root && root.args[0] === root.args[1]).toBe(true);
  });
});
