/**
 * Who of the invented company is examined in what, and when: fifty people on their way through the
 * schemes, so that every state of an application and of a certificate is there to be seen. How far and
 * how fast they come is this project's own choice. The scheme's own rules say when a part may be tried
 * again.
 */
import { addPeriod, type IsoDate } from '#engine/calendar.ts';
import type { Content } from '#engine/compile/content.ts';
import { renewalParts, type Part, type Scheme } from '#engine/exam/scheme.ts';
import { standingIn, type Tried } from '#engine/exam/standing.ts';
import { fraction, type Random, randomFrom, whole } from '#engine/random.ts';
import { approximate } from '#engine/measure/rational.ts';
import { type Answered, ExamForms, type Sitter } from './exam-answers.ts';

/** In days before the day it is made. */
export type Plan = {
  readonly scheme: Scheme;
  /** The application; undefined where an older certificate is all there is. */
  readonly began?: number;
  /** Granted on paper before the records began: so many days ago. */
  readonly carriedOver?: number;
  /** The parts after so many are not taken yet. */
  readonly parts?: number;
  /** What became of the certificate. */
  readonly state?: 'suspended' | 'withdrawn';
  /** Everything is passed and nobody has decided yet. */
  readonly isUndecided?: boolean;
};

export type PartDone = {
  readonly part: Part;
  readonly on: IsoDate;
  readonly result: 'passed' | 'failed';
  readonly share: number;
  readonly answers: readonly Answered[];
};

const days = (count: number) => ({ count, unit: 'days' }) as const;
export const daysBefore = (today: IsoDate, count: number): IsoDate =>
  addPeriod(today, days(count), -1);

/** By the place of a person among those who learn; an able one goes on to the next schemes. */
export function plansFor(
  content: Content,
  { place, ability }: { readonly place: number; readonly ability: number },
): readonly Plan[] {
  const [base, corners, lead] = [...content.schemes.values()].toSorted(
    (a, b) => a.requires.length - b.requires.length,
  );
  if (!base) return [];
  const more = (began: number): readonly Plan[] => {
    if (!corners || ability < 0.4) return [];
    const next: Plan = { scheme: corners, began: Math.max(12, began - 110) };
    if (!lead || ability < 1) return [next];
    return [next, { scheme: lead, began: Math.max(8, began - 200) }];
  };
  const spread = (place * 37) % 150;
  switch (place % 12) {
    case 0:
      return [{ scheme: base, carriedOver: 3 * 365 + 20 + (place % 60), began: 9, parts: 1 }];
    case 1:
      return [{ scheme: base, carriedOver: 3 * 365 - 20 - (place % 120), began: 45 }];
    case 2:
      return [{ scheme: base, carriedOver: 3 * 365 - 30 - (place % 140) }, ...more(300)];
    case 3:
      return [{ scheme: base, began: 60 + (spread % 30), parts: 2 }];
    case 4:
      return [{ scheme: base, began: 20 + (spread % 25), parts: 0 }];
    case 5:
      return [{ scheme: base, began: 240 + (spread % 80), state: 'suspended' }];
    case 6:
      return [{ scheme: base, began: 110, isUndecided: true }];
    case 7:
      return place % 24 === 7
        ? [{ scheme: base, began: 320, state: 'withdrawn' }]
        : [{ scheme: base, carriedOver: 3 * 365 + 150 }];
    default:
      return [{ scheme: base, began: 200 + spread }, ...more(200 + spread)];
  }
}

type Candidate = Sitter & { readonly seed: string; readonly today: IsoDate };

/** Takes the parts of an application one after the other, each until it is passed or tries are used up. */
export class Careers {
  readonly #forms: ReadonlyMap<string, ExamForms>;

  constructor(content: Content) {
    this.#forms = new Map([...content.schemes.keys()].map((id) => [id, new ExamForms(content)]));
  }

  taken(candidate: Candidate, plan: Plan): readonly PartDone[] {
    const { scheme, began, parts: most = Infinity, carriedOver } = plan;
    if (began === undefined) return [];
    const asked = carriedOver === undefined ? scheme.parts : renewalParts(scheme);
    const random = randomFrom(`${candidate.seed}/exams/${scheme.id}`);
    const done: PartDone[] = [];
    const seen = new Set<string>();
    let on = daysBefore(candidate.today, began - whole(random, 2, 6));
    for (const part of asked.slice(0, most)) {
      for (let turn = 0; turn < scheme.tries.most; turn += 1) {
        const allowed = this.#allowed(scheme, asked, done, part, on);
        on = allowed > on ? allowed : on;
        if (on >= candidate.today) return done;
        const name = `${candidate.seed}/${scheme.id}/${part.id}/${turn}`;
        const ability = candidate.ability + 0.35 * turn;
        const tried = this.#try(scheme, part, { ...candidate, ability }, name, random, seen);
        const isPassed = tried.share >= approximate(part.passMark.value);
        done.push({ part, on, result: isPassed ? 'passed' : 'failed', ...tried });
        on = addPeriod(on, days(whole(random, 3, 16)));
        if (isPassed) break;
      }
      if (done.at(-1)?.result !== 'passed') return done;
    }
    return done;
  }

  /** The first day from `on` on which the scheme lets the part be tried. */
  #allowed(
    scheme: Scheme,
    asked: readonly Part[],
    done: readonly PartDone[],
    { id }: Part,
    on: IsoDate,
  ): IsoDate {
    const tried = done.map(({ part, on: day, result }): Tried => ({
      part: part.id,
      on: day,
      result,
    }));
    // What is required before is held: the plans see to it.
    const held = new Map(scheme.requires.map((required) => [required, on] as const));
    const { parts } = standingIn(scheme, asked, { tried, held }, on);
    const state = parts.find(({ part }) => part === id)?.state;
    return state?.kind === 'must-wait' ? state.from : on;
  }

  #try(
    scheme: Scheme,
    part: Part,
    sitter: Sitter,
    seed: string,
    random: Random,
    seen: Set<string>,
  ): Pick<PartDone, 'share' | 'answers'> {
    if (part.kind === 'written') {
      const answers = this.#forms.get(scheme.id)!.sat(part.blueprint, seed, sitter, seen);
      const right = answers.filter(({ isRight }) => isRight).length;
      return { share: answers.length === 0 ? 0 : right / answers.length, answers };
    }
    const chance = 1 / (1 + Math.exp(-(1.5 + sitter.ability)));
    if (part.kind === 'takeoff') {
      const rights = Array.from({ length: part.count }, () => Number(fraction(random) < chance));
      return { share: rights.reduce((a, b) => a + b, 0) / part.count, answers: [] };
    }
    const isGood = fraction(random) < chance;
    const mark = approximate(part.passMark.value);
    const far = fraction(random);
    const share = isGood ? mark + (1 - mark) * far : mark - 0.03 - 0.25 * far;
    return { share: Math.round(share * 1000) / 1000, answers: [] };
  }
}
