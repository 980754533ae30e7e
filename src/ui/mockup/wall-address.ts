/**
 * The address of a mock-up says all of it: the wall, how it is built, the seed of its bench, and the
 * stretch where only a part is practised. Whoever opens the address gets the same.
 */
import { nearest } from '#engine/compile/nearest.ts';
import { attemptModes, type AttemptMode } from '#engine/marking/kept-attempt.ts';
import type { Method, StepId } from '#engine/method/method.ts';
import type { Part } from '#engine/method/part-of.ts';
import { type Site, siteFrom } from '#engine/method/site.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { isUuid } from '#engine/uuid.ts';

export type WallAddress = {
  readonly method: string;
  readonly site: Site;
  readonly mode: AttemptMode;
  readonly seed: string;
  readonly part?: Part;
  /** The assigned work that it is for, by its UUID; such a wall is built on one's own. */
  readonly work?: string;
};

/** One thing in an address that nothing here goes by, and what could have stood there. */
export type AddressFault = {
  readonly kind: 'question' | 'value';
  readonly name: string;
  readonly given: string;
  readonly known: readonly string[];
  readonly nearest: string | undefined;
};

const own = ['mode', 'seed', 'part', 'work'];
const seedForm = /^\d{1,9}$/;

export const isSeed = (text: string): boolean => seedForm.test(text);

/** Questions that the address leaves open take their usual value; without a mode it is guided. */
export function wallFrom(
  method: Method,
  asked: URLSearchParams,
): Result<WallAddress, readonly AddressFault[]> {
  const answers = [...asked].filter(([name]) => !own.includes(name));
  const site = siteFrom(method.site, Object.fromEntries(answers));
  const work = asked.get('work');
  const mode = work === null ? (asked.get('mode') ?? 'guided') : 'own';
  const seed = asked.get('seed') ?? '1';
  const part = asked.get('part');
  const faults: AddressFault[] = [
    ...(site.ok
      ? []
      : site.error.map(({ code, question, given, known }) =>
          code === 'UNKNOWN_SITE_QUESTION'
            ? faultOf('question', question, question, known)
            : faultOf('value', question, given, known),
        )),
    ...(isMode(mode) ? [] : [faultOf('value', 'mode', mode, attemptModes)]),
    ...(isSeed(seed) ? [] : [faultOf('value', 'seed', seed, ['1'])]),
    ...partFaults(method, part),
    ...(work === null || isUuid(work) ? [] : [faultOf('question', 'work', work, [])]),
  ];
  if (faults.length > 0 || !site.ok || !isMode(mode)) return fault(faults);
  const [from, to] = (part ?? '').split('..') as [StepId, StepId?];
  return ok({
    method: method.id,
    site: site.value,
    mode,
    seed,
    ...(to === undefined ? {} : { part: [from, to] }),
    ...(work === null ? {} : { work }),
  });
}

const isMode = (word: string): word is AttemptMode => attemptModes.some((mode) => mode === word);

const faultOf = (
  kind: AddressFault['kind'],
  name: string,
  given: string,
  known: readonly string[],
): AddressFault => ({ kind, name, given, known, nearest: nearest(given, known) ?? known[0] });

function partFaults({ steps }: Method, part: string | null): readonly AddressFault[] {
  if (part === null) return [];
  const ids = steps.map(({ id }) => id as string);
  const ends = part.split('..');
  if (ends.length === 2 && ends.every((end) => ids.includes(end))) return [];
  const whole = `${ids[0]}..${ids.at(-1)}`;
  return [{ kind: 'value', name: 'part', given: part, known: [], nearest: whole }];
}

/** The one address of a wall: what is the same has the same. */
export function addressOf({ method, site, mode, seed, part, work }: WallAddress): string {
  const asked = new URLSearchParams({ ...site, mode, seed });
  const stretch = part ? `&part=${part.map(encodeURIComponent).join('..')}` : '';
  const given = work ? `&work=${work}` : '';
  return `/practise/${encodeURIComponent(method)}?${asked.toString()}${stretch}${given}`;
}

/** The address with each fault mended by its nearest right choice. */
export function mended(asked: URLSearchParams, faults: readonly AddressFault[]): string {
  const right = new URLSearchParams(asked);
  for (const { kind, name, given, nearest: choice } of faults) {
    const value = right.get(name) ?? given;
    if (kind === 'question') right.delete(name);
    if (kind === 'question' && choice && !right.has(choice)) right.set(choice, value);
    if (kind === 'value' && choice) right.set(name, choice);
  }
  return `?${right.toString()}`;
}
