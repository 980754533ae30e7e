import type { Site, SiteQuestion } from '#engine/method/site.ts';
import { say } from '#ui/language/language.svelte.ts';

/** The answers of one wall: what was asked, and what it is. */
export const siteWords = (
  questions: readonly SiteQuestion[],
  site: Site,
): readonly { readonly name: string; readonly value: string }[] =>
  questions.map(({ id, name, values }) => {
    const value = values.find((one) => one.id === site[id]);
    return { name: say(name), value: value ? say(value.name) : (site[id] ?? '') };
  });
