import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { traced } from '#engine/tracing/trace.ts';
import {
  sureFrom,
  traceModelFrom,
  usualTrace,
  type TraceModel,
  type TraceParameters,
} from '#engine/tracing/trace-model.ts';

function modelOf(parameters: TraceParameters): TraceModel {
  const model = traceModelFrom(parameters);
  if (!model.ok) throw new Error(model.error.map(({ message }) => message).join(' '));
  return model.value;
}

const faultsOf = (changed: Partial<TraceParameters>) => {
  const model = traceModelFrom({ ...usualTrace, ...changed });
  return model.ok ? [] : model.error.map(({ code }) => code);
};

// The parameters and the tries of a published demonstration of the form of Corbett and Anderson (1995),
// reference.org/admin/ArticleEdit/qLHlv1Av; the trace below was worked out again from its formulas.
const shown = modelOf({ known: 0.5, learn: 0.4, slip: 0.2, guess: 0.2 });
const tries = [0, 0, 1, 1, 1, 0, 1, 1, 0, 1].map((one) => one === 1);

describe('truth', () => {
  test('the posterior and what follows are these fractions exactly', () => {
    const four = traced(shown, tries.slice(0, 4));
    const exact = [
      [1 / 5, 13 / 25],
      [13 / 61, 161 / 305],
      [161 / 197, 877 / 985],
      [877 / 904, 4439 / 4520],
    ];
    for (const [at, [posterior, next]] of exact.entries()) {
      expect(four[at]!.posterior).toBeCloseTo(posterior!, 15);
      expect(four[at]!.next).toBeCloseTo(next!, 15);
    }
  });

  test('ten tries give this trace', () => {
    const trace = traced(shown, tries).map(({ predicted, posterior, next }) =>
      [predicted, posterior, next].map((value) => Number(value.toFixed(6))),
    );
    expect(trace).toEqual([
      [0.5, 0.2, 0.52],
      [0.512, 0.213115, 0.527869],
      [0.516721, 0.817259, 0.890355],
      [0.734213, 0.970133, 0.98208],
      [0.789248, 0.995459, 0.997275],
      [0.798365, 0.98919, 0.993514],
      [0.796108, 0.998371, 0.999022],
      [0.799413, 0.999755, 0.999853],
      [0.799912, 0.999413, 0.999648],
      [0.799789, 0.999912, 0.999947],
    ]);
  });

  test('as usually assumed, three right in a row are sure and two are not', () => {
    const right = traced(usualTrace, [true, true, true]).map(({ next }) => next >= sureFrom);
    expect(right).toEqual([false, false, true]);
  });

  test('what is usually assumed passes its own door', () => {
    expect(traceModelFrom(usualTrace).ok).toBe(true);
  });
});

const anyModel = fc
  .record({
    known: fc.double({ min: 0, max: 1, noNaN: true }),
    learn: fc.double({ min: 0, max: 1, noNaN: true }),
    slip: fc.double({ min: 0, max: 1, noNaN: true }),
    guess: fc.double({ min: 0, max: 1, noNaN: true }),
  })
  .filter(({ slip, guess }) => 1 - slip > guess)
  .map(modelOf);

describe('laws', () => {
  test('every number of a trace is a probability', () => {
    fc.assert(
      fc.property(anyModel, fc.array(fc.boolean(), { maxLength: 200 }), (model, seen) => {
        for (const value of traced(model, seen).flatMap(Object.values)) {
          expect(value).toBeGreaterThanOrEqual(0);
          expect(value).toBeLessThanOrEqual(1 + 1e-12);
        }
      }),
    );
  });

  test('a right try never makes one less sure than a wrong one, now or later', () => {
    fc.assert(
      fc.property(
        anyModel,
        fc.array(fc.boolean(), { minLength: 1, maxLength: 30 }),
        fc.nat(),
        (model, seen, nat) => {
          const at = nat % seen.length;
          const right = traced(model, seen.with(at, true)).at(-1)!.next;
          const wrong = traced(model, seen.with(at, false)).at(-1)!.next;
          expect(right).toBeGreaterThanOrEqual(wrong - 1e-12);
        },
      ),
    );
  });

  // A doubt of 10^-65, which 1 minus a double next to 1 cannot tell from none.
  test('what came out right a hundred times is doubted after as many wrong tries', () => {
    const seen = [...Array<boolean>(100).fill(true), ...Array<boolean>(100).fill(false)];
    const model = modelOf({ known: 0.3, learn: 0, slip: 0.1, guess: 0.2 });
    expect(traced(model, seen).at(-1)!.next).toBeLessThan(0.5);
  });

  test('a try that the model holds impossible leaves it as it was', () => {
    const certain = modelOf({ known: 1, learn: 0.2, slip: 0, guess: 0 });
    expect(traced(certain, [false, true])).toMatchObject([{ posterior: 1 }, { posterior: 1 }]);
  });
});

describe('the door for parameters', () => {
  test.each([-0.1, 1.1, NaN, Infinity])(
    'refuses %d as a probability, each one by name',
    (value) => {
      for (const name of ['known', 'learn', 'slip', 'guess']) {
        expect(faultsOf({ [name]: value })).toEqual(['NOT_A_PROBABILITY']);
      }
      expect(faultsOf({ known: value, learn: value })).toHaveLength(2);
    },
  );

  test('refuses what would turn every sign round', () => {
    expect(faultsOf({ slip: 0.5, guess: 0.5 })).toEqual(['RIGHT_MEANS_NOTHING']);
    expect(faultsOf({ slip: 0.9, guess: 0.2 })).toEqual(['RIGHT_MEANS_NOTHING']);
    expect(faultsOf({ slip: 0.5, guess: 0.49 })).toEqual([]);
  });
});
