import type { TakeoffBundle } from '#engine/compile/takeoff-bundle.ts';
import type { Instance } from '#engine/takeoff/instance.ts';
import type { KeptProblem } from '#engine/takeoff/kept-problem.ts';
import { problemOf, type Problem } from '#engine/takeoff/problem.ts';
import { workedSolution, type WorkedLine } from '#engine/takeoff/worked.ts';
import { ownAnswers } from './own-answers.ts';
import { PartAnswer } from './part-answer.svelte.ts';
import type { ProblemAddress } from './problem-address.ts';

type Stamp = { readonly id: string; readonly at: string };

/**
 * A problem while it is answered, one part after the other. Whoever goes on with a wrong answer is
 * judged by it from there on.
 */
export class Answering {
  readonly address: ProblemAddress;
  readonly problem: Problem;
  readonly parts: readonly PartAnswer[];
  place = $state(0);
  readonly #bundle: TakeoffBundle;
  readonly #instance: Instance;

  constructor(bundle: TakeoffBundle, instance: Instance, address: ProblemAddress) {
    this.#bundle = bundle;
    this.#instance = instance;
    this.address = address;
    this.problem = problemOf(instance);
    this.parts = this.problem.asks.map(
      ({ ask }, place) => new PartAnswer(instance, place, ask, address.form, address.seed),
    );
  }

  readonly current: PartAnswer = $derived.by(() => this.parts[this.place]!);
  readonly isLast: boolean = $derived.by(() => this.place === this.parts.length - 1);
  readonly isDone: boolean = $derived.by(() => this.isLast && this.current.isClosed);
  /** Something is answered, or about to be, and something is left. */
  readonly isUnderWay: boolean = $derived.by(() => {
    const { text, chosen, tries } = this.current;
    const isBegun = this.place > 0 || tries.length > 0 || text !== '' || chosen !== undefined;
    return isBegun && !this.isDone;
  });

  working(place: number): readonly WorkedLine[] {
    return workedSolution(this.#instance, this.parts[place]!.solved.part.id);
  }

  check(): 'judged' | 'unread' | 'empty' {
    return this.current.check(ownAnswers(this.parts.slice(0, this.place)));
  }

  goOn(): void {
    if (!this.isLast) this.place += 1;
  }

  kept({ id, at }: Stamp): KeptProblem {
    const { family, seed, form, work } = this.address;
    const given = work ? { work } : {};
    const { revision, sheetRevision } = this.#bundle;
    const answers = this.parts.flatMap((part) => part.kept() ?? []);
    return { id, at, family, seed, form, ...given, revision, sheetRevision, answers };
  }

  /** Whether that is this problem, of the same content, and something of it is left to do. */
  isLeftIn({ family, seed, form, work, revision, sheetRevision, answers }: KeptProblem): boolean {
    const { address } = this;
    const isSame =
      family === address.family &&
      seed === address.seed &&
      form === address.form &&
      work === address.work;
    const isCurrent =
      revision === this.#bundle.revision && sheetRevision === this.#bundle.sheetRevision;
    const last = answers.find(({ part }) => part === this.parts.at(-1)!.solved.part.id);
    return isSame && isCurrent && !last?.closed;
  }

  /** Goes on where somebody left off. */
  resume({ answers }: KeptProblem): void {
    for (const [place, part] of this.parts.entries()) {
      const kept = answers.find((answer) => answer.part === part.solved.part.id);
      if (!kept || !part.replay(kept, ownAnswers(this.parts.slice(0, place)))) return;
      this.place = part.isClosed && place < this.parts.length - 1 ? place + 1 : place;
    }
  }
}
