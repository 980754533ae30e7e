import { missingBefore } from '#engine/marking/guidance.ts';
import type { FixedRule } from '#engine/method/data-sheet.ts';
import { judge } from '#engine/method/rule.ts';
import type { Sequence } from '#engine/method/sequence.ts';
import type { Text } from '#engine/text.ts';
import type { Installation } from './installation.ts';
import type { SettingEntry } from './setting-entry.svelte.ts';

/** Why a card may not be put up now. The step that has to come first is not named. */
export type Refusal =
  | { readonly kind: 'stray'; readonly because: Text | undefined }
  | { readonly kind: 'not-yet'; readonly because: readonly Text[] }
  | { readonly kind: 'still-wet'; readonly because: Text; readonly test: Text }
  | {
      readonly kind: 'tolerance';
      readonly ask: Text;
      readonly because: Text;
      readonly rule: FixedRule;
      /** Whether what the data sheet asks is told, too: from the second time on. */
      readonly isTold: boolean;
    };

/** The first thing that speaks against a card, or undefined where nothing does. */
export function refusalOf(
  sequence: Sequence,
  installed: Installation,
  placed: ReadonlySet<string>,
  card: string,
  entries: readonly SettingEntry[],
  isAgain: boolean,
): Refusal | undefined {
  const place = sequence.steps.findIndex(({ id }) => id === card);
  if (place < 0) return { kind: 'stray', because: decoyReason(sequence, card) };
  const missing = missingBefore(sequence, place, doneIn(sequence, placed));
  if (missing.length > 0) {
    return { kind: 'not-yet', because: missing.map(({ because }) => because) };
  }
  const wet = sequence.constraints
    .filter(({ after }) => after === place)
    .map(({ before }) => sequence.steps[before]!)
    .find(({ id, dries }) => dries && installed.stateOf(id) === 'curing');
  if (wet?.dries) return { kind: 'still-wet', because: wet.dries.because, test: wet.dries.test };
  const off = entries.find(
    ({ ask, value }) => value && !judge(ask.rule, value, ask.sheetNumber.entry).within,
  );
  if (!off) return undefined;
  const { ask, because, rule } = off.ask;
  return { kind: 'tolerance', ask, because, rule, isTold: isAgain };
}

/** The steps, by place, whose cards are up. */
export const doneIn = ({ steps }: Sequence, placed: ReadonlySet<string>): ReadonlySet<number> =>
  new Set(steps.flatMap(({ id }, place) => (placed.has(id) ? [place] : [])));

function decoyReason({ strays }: Sequence, card: string): Text | undefined {
  const stray = strays.find((one) => one.kind === 'decoy' && one.decoy.id === card);
  return stray?.kind === 'decoy' ? stray.decoy.because : undefined;
}
