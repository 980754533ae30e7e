/**
 * The address of a problem says all of it: the family, its seed, how it is answered, and what the next
 * one is taken from. Whoever opens the address gets the same numbers.
 */
import { answerForms, type AnswerForm } from '#engine/takeoff/kept-problem.ts';
import { isUuid } from '#engine/uuid.ts';
import { isSeed } from '#ui/mockup/wall-address.ts';

export type ProblemAddress = {
  readonly family: string;
  readonly seed: string;
  readonly form: AnswerForm;
  /** What is practised: this family alone, some of them, or whatever was missed among all. */
  readonly among: 'this' | 'all' | readonly string[];
  /** The assigned work that it is for, by its UUID. */
  readonly work?: string;
};

/** One thing in an address that nothing here goes by. */
export type AddressFault = { readonly name: 'seed' | 'form' | 'work'; readonly given: string };

const isForm = (word: string): word is AnswerForm => answerForms.some((form) => form === word);

/**
 * What cannot be gone by counts as left out: the seed as 1, the form as written in. Assigned work is
 * practised in its own family alone.
 */
export function problemFrom(
  family: string,
  asked: URLSearchParams,
): { readonly address: ProblemAddress; readonly faults: readonly AddressFault[] } {
  const seed = asked.get('seed') ?? '1';
  const form = asked.get('form') ?? 'entry';
  const work = asked.get('work');
  const among = work === null ? (asked.get('among') ?? '') : '';
  const faults: AddressFault[] = [
    ...(isSeed(seed) ? [] : [{ name: 'seed', given: seed } as const]),
    ...(isForm(form) ? [] : [{ name: 'form', given: form } as const]),
    ...(work === null || isUuid(work) ? [] : [{ name: 'work', given: work } as const]),
  ];
  return {
    address: {
      family,
      seed: isSeed(seed) ? seed : '1',
      form: isForm(form) ? form : 'entry',
      among: among === '' ? 'this' : among === 'all' ? 'all' : among.split(','),
      ...(isUuid(work) ? { work } : {}),
    },
    faults,
  };
}

/** The one address of a problem: what is the same has the same. */
export function addressOf({ family, seed, form, among, work }: ProblemAddress): string {
  const asked = new URLSearchParams({ seed });
  if (form !== 'entry') asked.set('form', form);
  if (work) asked.set('work', work);
  const list = typeof among === 'string' ? among : among.map(encodeURIComponent).join(',');
  const rest = list === 'this' ? '' : `&among=${list}`;
  return `/takeoff/${encodeURIComponent(family)}?${asked.toString()}${rest}`;
}
