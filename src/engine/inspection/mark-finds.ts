/**
 * What somebody pointed out on a faulty wall, against what is wrong with it. A find names a zone and a
 * kind; with a card too, it must be the right one. Faults of one kind share no zone, so a find that is
 * right is right about one fault only; those that have the place but not the kind are matched with the
 * faults not found so that as many as can be are used (H. W. Kuhn, "The Hungarian method for the
 * assignment problem", Naval Research Logistics 2, 1955; here by augmenting paths). So the score does not
 * depend on the order of the finds. O(finds x faults^2).
 *
 * Score, this project's own choice: each fault found counts fully, one only located by half, and each
 * false alarm takes half a fault away again, down to nothing. Naming the same fault again is free.
 */
import type { Zone } from '#engine/method/drawing.ts';
import type { Text } from '#engine/text.ts';
import type { Fault, FaultKind } from './fault.ts';
import type { FaultyWall } from './faulty-wall.ts';

export type Find = {
  readonly zone: Zone;
  readonly kind: FaultKind;
  readonly card?: string | undefined;
};

/** `located`: something is wrong there, but not that. */
export type FindVerdict = 'found' | 'again' | 'located' | 'false-alarm';

export type MarkedFind = Find & {
  readonly verdict: FindVerdict;
  /** Which of the wall's faults it is about. */
  readonly fault: number | undefined;
  readonly because: Text;
};

export type MarkedFault = {
  readonly fault: Fault;
  readonly verdict: 'found' | 'located' | 'missed';
  /** Which of the finds it was. */
  readonly by: number | undefined;
};

export type MarkedFinds = {
  /** 0 to 100, to a tenth; 100 only where every fault was found and nothing else said. */
  readonly score: number;
  /** As given. */
  readonly finds: readonly MarkedFind[];
  /** As in the wall. */
  readonly faults: readonly MarkedFault[];
};

export function markFinds(
  { faults }: Pick<FaultyWall, 'faults'>,
  finds: readonly Find[],
): MarkedFinds {
  const about = finds.map((find) => faults.findIndex((fault) => isRight(fault, find)));
  const finders = faults.map((_, fault) => about.indexOf(fault));
  const locators = locate(
    faults.map((fault, index) =>
      finders[index] === -1
        ? [...finds.keys()].filter((at) => about[at] === -1 && liesIn(fault, finds[at]!))
        : [],
    ),
  );
  const markedFinds = finds.map((find, at): MarkedFind => {
    const right = about[at]!;
    if (right !== -1) {
      const verdict = finders[right] === at ? 'found' : 'again';
      return { ...find, verdict, fault: right, because: faults[right]!.item.because };
    }
    const located = locators.indexOf(at);
    return located === -1
      ? { ...find, verdict: 'false-alarm', fault: undefined, because: nothing }
      : { ...find, verdict: 'located', fault: located, because: something };
  });
  const markedFaults = faults.map((fault, index): MarkedFault => {
    const [finder, locator] = [finders[index]!, locators[index]];
    if (finder !== -1) return { fault, verdict: 'found', by: finder };
    return { fault, verdict: locator === undefined ? 'missed' : 'located', by: locator };
  });
  return { score: scoreOf(markedFinds, faults.length), finds: markedFinds, faults: markedFaults };
}

const liesIn = ({ zones }: Fault, { zone }: Find): boolean => zones.includes(zone);

const isRight = (fault: Fault, find: Find): boolean =>
  liesIn(fault, find) &&
  fault.kind === find.kind &&
  (find.card === undefined || fault.cards.some((card) => card === find.card));

/** One of its candidates for each fault, none twice, so that as many faults as can be have one. */
function locate(candidates: readonly (readonly number[])[]): readonly (number | undefined)[] {
  const used = new Map<number, number>();
  const place = (fault: number, tried: Set<number>): boolean =>
    candidates[fault]!.some((find) => {
      if (tried.has(find)) return false;
      tried.add(find);
      const holder = used.get(find);
      if (holder !== undefined && !place(holder, tried)) return false;
      used.set(find, fault);
      return true;
    });
  for (const fault of candidates.keys()) place(fault, new Set());
  const finds = new Map([...used].map(([find, fault]) => [fault, find]));
  return [...candidates.keys()].map((fault) => finds.get(fault));
}

function scoreOf(finds: readonly MarkedFind[], faults: number): number {
  if (faults === 0) return finds.length === 0 ? 100 : 0;
  const count = (verdict: FindVerdict): number =>
    finds.filter((find) => find.verdict === verdict).length;
  const halves = 2 * count('found') + count('located') - count('false-alarm');
  return Math.round((Math.max(0, halves) * 1000) / (2 * faults)) / 10;
}

const nothing: Text = {
  en: 'Nothing is wrong there, or nothing more. On a real wall this would open sound work.',
  es: 'Ahí no hay nada mal, o nada más. En un muro real se abriría un trabajo bien hecho.',
};

const something: Text = {
  en: 'Something is wrong there, but not that. Look again at what it is.',
  es: 'Ahí hay algo mal, pero no es eso. Fíjese otra vez en qué es.',
};
