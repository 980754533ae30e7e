import { say } from '#ui/language/language.svelte.ts';
import type { Column } from './board-row.ts';

/** What a column or part is called; its id where the content no longer has it. */
export function titleIn(columns: readonly Column[], id: string): string {
  const found = columns.find((column) => column.id === id);
  return found ? say(found.title) : id;
}
