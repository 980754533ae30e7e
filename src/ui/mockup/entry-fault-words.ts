import type { Entry } from '#engine/method/data-sheet.ts';
import { language, say } from '#ui/language/language.svelte.ts';
import { quantityWords } from '#ui/measure/quantity-words.ts';
import { m } from '#ui/messages/generated/messages.js';
import type { EntryFault } from './setting-entry.svelte.ts';

/** What is wrong with what was typed, and how to mend it. */
export function entryFaultWords(fault: EntryFault, entry: Entry | undefined): string {
  if (fault !== 'not-offered') return say(fault);
  const { current } = language;
  if (entry?.kind === 'one-of') {
    const sizes = entry.values.map((value) => quantityWords(value, current));
    return m.mockup_entry_one_of({ sizes: sizes.join(', ') });
  }
  return m.mockup_entry_range({
    from: entry ? quantityWords(entry.from, current) : '',
    to: entry ? quantityWords(entry.to, current) : '',
  });
}
