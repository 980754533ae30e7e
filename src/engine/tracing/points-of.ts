/**
 * What one person's attempts show of the methods that they practised: how sure each key point is, how
 * often and when it was seen, and what to practise next, with the stretch of a wall to do it on. Plain
 * values, made the same by a server for somebody with an account and by a browser for whoever has none.
 * O(attempts x key points x cards).
 */
import type { Method, MethodId } from '#engine/method/method.ts';
import type { Part } from '#engine/method/part-of.ts';
import { type Sequence, sequenceOf } from '#engine/method/sequence.ts';
import { allSites, holds, type Site } from '#engine/method/site.ts';
import type { Text } from '#engine/text.ts';
import { type KeyPoint, keyPointsOf } from './key-point.ts';
import { type KeyPointState, keyPointStates, toPractise } from './key-point-states.ts';
import { partToPractise } from './part-to-practise.ts';
import type { Reviewed } from './seen.ts';

/** More tell nothing new: three right in a row are sure. */
export const mostTried = 200;

/** An attempt without hints, with its review and the instant at which it was finished. */
export type Tried = Reviewed & { readonly finished: string };

/** `nearly`: more likely known than not. */
export type Sureness = 'sure' | 'nearly' | 'not-yet' | 'unseen';

export type PointSeen = {
  readonly point: KeyPoint;
  /** The step, and what its setting asks for. */
  readonly step: Text;
  readonly ask: Text | undefined;
  readonly sureness: Sureness;
  readonly probability: number;
  readonly seen: number;
  readonly right: number;
  readonly lastSeen: string | undefined;
};

export type MethodPoints = {
  readonly id: MethodId;
  readonly title: Text;
  readonly attempts: number;
  /** In the order of the method. */
  readonly points: readonly PointSeen[];
};

/** A wall where the point can be shown; without a stretch where it takes all of that wall. */
export type ToPractise = PointSeen & { readonly site: Site; readonly part: Part | undefined };

export type PersonPoints = {
  readonly attempts: number;
  /** The method practised last comes first. */
  readonly methods: readonly MethodPoints[];
  readonly next: readonly ToPractise[];
};

/** The attempts are one person's, the earliest first; of more than `mostTried` the last are taken. */
export function pointsOf(all: readonly Tried[], most = 5): PersonPoints {
  const tried = all.slice(-mostTried);
  const byMethod = Map.groupBy(tried, ({ attempt }) => attempt.sequence.method.id);
  const sequences = new Map([...byMethod].map(([id, own]) => [id, own.at(-1)!.attempt.sequence]));
  const methods = [...sequences.values()].map(({ method }) => method);
  const states = keyPointStates(methods.flatMap(keyPointsOf), tried);
  const seen = (state: KeyPointState): PointSeen =>
    pointSeen(sequences.get(state.point.method)!.method, tried, state);
  return {
    attempts: tried.length,
    methods: methods
      .map(({ id, title }) => ({
        id,
        title,
        attempts: byMethod.get(id)!.length,
        points: states.filter(({ point }) => point.method === id).map(seen),
      }))
      .toSorted((a, b) => lastAt(tried, b.id) - lastAt(tried, a.id)),
    next: toPractise(states)
      .slice(0, most)
      .flatMap((state) => {
        const wall = wallFor(state, sequences.get(state.point.method)!, tried);
        return wall
          ? [{ ...seen(state), site: wall.site, part: partToPractise(wall, [state]) }]
          : [];
      }),
  };
}

const lastAt = (tried: readonly Tried[], id: MethodId): number =>
  tried.findLastIndex(({ attempt }) => attempt.sequence.method.id === id);

/**
 * The whole wall to show a point on: the last one tried that had its step, else the most usual one that
 * has it; undefined where none has.
 */
function wallFor(
  { point }: KeyPointState,
  { method, dataSheet }: Sequence,
  tried: readonly Tried[],
): Sequence | undefined {
  const step = method.steps.find(({ id }) => id === point.step)!;
  const sites = tried
    .filter(({ attempt }) => attempt.sequence.method.id === method.id)
    .map(({ attempt }) => attempt.sequence.site);
  const has = (site: Site): boolean => holds(step.when, site);
  const site = sites.findLast(has) ?? allSites(method.site).find(has);
  const wall = site && sequenceOf(method, dataSheet, site);
  return wall?.ok ? wall.value : undefined;
}

function pointSeen(
  method: Method,
  tried: readonly Tried[],
  { point, observations, probability, isSure, lastSeen }: KeyPointState,
): PointSeen {
  const step = method.steps.find(({ id }) => id === point.step)!;
  const setting =
    point.kind === 'setting' ? step.settings.find(({ id }) => id === point.setting) : undefined;
  return {
    point,
    step: step.say,
    ask: setting?.ask,
    sureness: surenessOf(observations.length, probability, isSure),
    probability,
    seen: observations.length,
    right: observations.filter(Boolean).length,
    lastSeen: lastSeen === undefined ? undefined : tried[lastSeen]!.finished,
  };
}

function surenessOf(seen: number, probability: number, isSure: boolean): Sureness {
  if (seen === 0) return 'unseen';
  if (isSure) return 'sure';
  return probability >= nearlyFrom ? 'nearly' : 'not-yet';
}

/** From here on it is likelier that somebody has it than not: this project's own choice. */
export const nearlyFrom = 0.5;
