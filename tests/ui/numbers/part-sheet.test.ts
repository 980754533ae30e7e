import { render, screen, within } from '@testing-library/svelte';
import { afterEach, describe, expect, test } from 'vitest';
import { testVerdict } from '#engine/statistics/test-verdict.ts';
import { wilson } from '#engine/statistics/wilson.ts';
import { language } from '#ui/language/language.svelte.ts';
import type { Forms, PrecisionSaid } from '#ui/numbers/number-view.ts';
import PartSheet from '#ui/numbers/PartSheet.svelte';
import { lsat6 } from '../../engine/statistics/lsat6.ts';
import { harderInSpanish, questionWith, sound, verdictOf } from './made-numbers.ts';

const precision: PrecisionSaid = {
  enough: true,
  value: {
    outcome: 'converged',
    reliability: 0.74,
    questions: 30,
    passMark: 0.7,
    offAtPassMark: 2.1,
    errorOfMeasurement: 2.34,
    ability: -0.4,
    curve: [-3, 0, 3].map((ability) => ({ ability, information: 2 })),
    cycles: 23,
  },
};
const alone: Forms = { count: 112, alone: 112, lines: [] };
const enough = { enough: true, value: { share: 0.8, interval: wilson(80, 100) } } as const;

const props = (changes: object = {}, more: object = {}) => ({
  company: 'x',
  scheme: { id: 's', title: { en: 'Installer', es: 'Instalador' } },
  part: {
    id: 'p',
    title: { en: 'Knowledge', es: 'Conocimientos' },
    isWritten: true,
    passMark: 0.7,
  },
  numbers: {
    sat: 112,
    tries: 120,
    passed: enough,
    bins: Array<number>(20).fill(5),
    groups: [],
    precision,
    forms: alone,
    ...changes,
  },
  drawn: undefined,
  questions: [],
  sort: 'trouble' as const,
  ...more,
});

const section = (name: string) => within(screen.getByRole('region', { name }));

afterEach(() => language.choose('en'));

describe('truth', () => {
  test('with enough people: how sure a result is in questions, and the figures after', () => {
    render(PartSheet, props());
    const sure = section('How sure a result is');
    expect(sure.getByText('The part tells people apart well enough to decide by.')).toBeVisible();
    expect(sure.getByText(/is off by about 2\.3 of 30 questions/)).toBeInTheDocument();
    const figures = sure.getByText(/^Reliability 0\.74\./);
    expect(figures).toHaveTextContent('Standard error of measurement: 2.34 questions.');
    expect(figures).toHaveTextContent('The computation settled after 23 rounds.');
    expect(section('Results').getByText(/^80 % · the true share lies between/)).toBeInTheDocument();
  });

  test('where nobody shares a form it says why there is no KR-20, and what stands instead', () => {
    render(PartSheet, props());
    const said = section('How sure a result is').getByText(/^Each of the 112 people had other/);
    expect(said).toHaveTextContent('KR-20 compares people with the same questions');
    expect(said).toHaveTextContent('the reliability above');
  });

  test('of a form that many sat: mean, pass rate, KR-20 with its interval, error of measurement', () => {
    const line = {
      questions: 5,
      sat: 1000,
      mean: { enough: true, value: 3.819 },
      passed: enough,
      verdict: testVerdict(lsat6),
    } as const;
    const few = {
      questions: 5,
      sat: 2,
      mean: { enough: false, have: 2, need: 21 },
      passed: { enough: false, have: 2, need: 21 },
      verdict: { standing: 'too-few-persons', have: 2, need: 35 },
    } as const;
    render(PartSheet, props({ forms: { count: 5, alone: 3, lines: [line, few] } }));
    const heading = screen.getByRole('heading', { name: 'Form by form' });
    const list = heading.parentElement!.querySelector('ol')!;
    const [first, second] = within(list).getAllByRole('listitem');
    expect(first).toHaveTextContent('On average 3.8 of 5 right.');
    expect(first).toHaveTextContent('hardly tells people apart');
    expect(first).toHaveTextContent('off by about 0.9 of 5 questions');
    // Alpha of LSAT section 6 is 0.295, its error of measurement 0.869 (mirt's reference pages).
    expect(first).toHaveTextContent(/KR-20 0\.29, between 0\.22 and 0\.36 .* of 1000 people/);
    expect(first).toHaveTextContent('Standard error of measurement: 0.87 questions.');
    expect(second).toHaveTextContent('it takes 21, there are 2');
    expect(second).toHaveTextContent('takes 35 people who answered every question; there are 2');
    expect(second).not.toHaveTextContent('KR-20');
    expect(screen.getByText(/^3 more forms were each sat by one person/)).toBeInTheDocument();
  });

  test('with too few people it says how many it takes, and prints no figure', () => {
    const tooFew = { enough: false, have: 7, need: 21 } as const;
    render(
      PartSheet,
      props({ sat: 7, passed: tooFew, precision: { enough: false, have: 7, need: 100 } }),
    );
    expect(section('Results').getByText(/it takes 21, there are 7/)).toBeInTheDocument();
    const sure = section('How sure a result is');
    expect(sure.getByText('Too few to say: it takes 100, there are 7.')).toBeInTheDocument();
    expect(sure.queryByText(/Reliability \d|error of measurement/)).toBeNull();
    expect(sure.queryByRole('img')).toBeNull();
  });

  test('a run that did not settle gives no reliability, and says after how many rounds', () => {
    const value = { outcome: 'not-converged', reason: 'out-of-cycles', cycles: 500 } as const;
    render(PartSheet, props({ precision: { enough: true, value } }));
    const sure = section('How sure a result is');
    expect(sure.getByText(/came to no end in 500 rounds/)).toBeInTheDocument();
    expect(sure.queryByText(/Reliability \d/)).toBeNull();
    expect(sure.queryByRole('img')).toBeNull();
  });

  test.each([
    [0.71, /^Yes, as far as can be expected: on the hardest form 70 % right/],
    [0.79, /^Not quite: on the hardest form 70 % right are expected, on the easiest 79 %/],
  ])('how far forms lie apart is told: up to %d', (most, words) => {
    const drawn = { forms: 4, mean: 0.705, spread: 0.012, least: 0.7, most };
    render(PartSheet, props({}, { drawn: { ...drawn, unmatched: 2, unknown: 1 } }));
    const sure = section('How sure a result is');
    expect(sure.getByText(words)).toBeInTheDocument();
    expect(sure.getByText(/^2 forms could not be drawn/)).toBeInTheDocument();
    const figures = sure.getByText(/^4 forms drawn/);
    expect(figures).toHaveTextContent('a spread of 1.2 percentage points');
    expect(figures).toHaveTextContent('Of 1 older form it was not kept.');
  });

  test('the question with the most trouble comes first, each with what is wrong with it', () => {
    const hard = verdictOf([
      [5, '111'],
      [60, '011'],
      [55, '000'],
    ]);
    const questions = [
      questionWith({ id: 'sound', verdict: sound }),
      questionWith({ id: 'hard', verdict: hard }),
    ];
    render(PartSheet, props({}, { questions }));
    const [first, second] = section('Questions').getAllByRole('listitem');
    expect(first).toHaveTextContent('Too hard: hardly anybody gets it right.');
    expect(within(first!).getByRole('link')).toHaveAttribute('href', '/company/x/numbers/s/p/hard');
    expect(second).toHaveTextContent('Nothing speaks against it.');
  });

  test('groups say that only languages are compared, and name the question that differs', () => {
    const questions = [
      questionWith({ id: 'sound', verdict: sound }),
      questionWith({ id: 'spanish', verdict: harderInSpanish }),
    ];
    render(PartSheet, props({}, { questions }));
    const groups = section('Groups');
    expect(groups.getByText(/^Only languages are compared/)).toBeInTheDocument();
    expect(groups.getByText(/^Look at 1 of the 1 questions/)).toBeInTheDocument();
    const list = groups.getByRole('list', { name: 'Questions that treat a language differently' });
    const [only, ...others] = within(list).getAllByRole('link');
    expect(others).toEqual([]);
    expect(only).toHaveAttribute('href', '/company/x/numbers/s/p/spanish');
    expect(only).toHaveTextContent('Harder in Spanish than in English');
  });

  test('a part that nobody sat says so', () => {
    render(PartSheet, props({ sat: 0 }));
    expect(screen.getByText('Nobody sat this part yet')).toBeInTheDocument();
    expect(screen.queryByRole('region')).toBeNull();
  });

  test('Spanish says the same', () => {
    language.choose('es');
    render(PartSheet, props());
    expect(screen.getByText(/^Cada una de las 112 personas tuvo otras preguntas/)).toBeVisible();
    expect(screen.getByText(/se asentó después de 23 vueltas/)).toBeInTheDocument();
  });
});
