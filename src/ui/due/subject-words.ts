import type { MethodEntry, TakeoffEntry } from '#engine/compile/catalogue.ts';
import { siteFrom } from '#engine/method/site.ts';
import { say } from '#ui/language/language.svelte.ts';
import { m } from '#ui/messages/generated/messages.js';
import { siteWords } from '#ui/mockup/site-words.ts';
import type { DueSubject } from './due-list.ts';

/** Of the catalogue, what names something. */
export type Known = {
  readonly methods: readonly Pick<MethodEntry, 'id' | 'title' | 'site'>[];
  readonly takeoffs: readonly Pick<TakeoffEntry, 'id' | 'title'>[];
};

/** What is to be done, and on which wall; the id where the content no longer has it. */
export function subjectWords(
  { methods, takeoffs }: Known,
  subject: DueSubject,
): { readonly title: string; readonly note: string } {
  if (subject.kind === 'takeoff') {
    const family = takeoffs.find(({ id }) => id === subject.family);
    return { title: family ? say(family.title) : subject.family, note: m.takeoff_title() };
  }
  const method = methods.find(({ id }) => id === subject.method);
  const title = method ? say(method.title) : subject.method;
  if (!subject.site) return { title, note: m.assign_any_wall() };
  const site = method && siteFrom(method.site, subject.site);
  const values =
    method && site?.ok
      ? siteWords(method.site, site.value).map(({ value }) => value)
      : Object.values(subject.site);
  return { title, note: values.join(' · ') };
}

/** What an attempt was about, by the id of a method or a family. */
export function aboutWords({ methods, takeoffs }: Known, about: string): string {
  const found = [...methods, ...takeoffs].find(({ id }) => id === about);
  return found ? say(found.title) : about;
}
