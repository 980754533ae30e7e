import type { MethodEntry, TakeoffEntry, TopicEntry } from '#engine/compile/catalogue.ts';
import { siteFrom } from '#engine/method/site.ts';
import { say } from '#ui/language/language.svelte.ts';
import { m } from '#ui/messages/generated/messages.js';
import { siteWords } from '#ui/mockup/site-words.ts';
import type { DueSubject } from './due-list.ts';

/** Of the catalogue, what names something. */
export type Known = {
  readonly methods: readonly Pick<MethodEntry, 'id' | 'title' | 'site'>[];
  readonly takeoffs: readonly Pick<TakeoffEntry, 'id' | 'title'>[];
  readonly topics: readonly Pick<TopicEntry, 'id' | 'title'>[];
};

/** What is to be done, and on which wall; the id where the content no longer has it. */
export function subjectWords(
  { methods, takeoffs, topics }: Known,
  subject: DueSubject,
): { readonly title: string; readonly note: string } {
  if (subject.kind === 'takeoff') {
    const family = takeoffs.find(({ id }) => id === subject.family);
    return { title: family ? say(family.title) : subject.family, note: m.takeoff_title() };
  }
  if (subject.kind === 'written') {
    const topic = topics.find(({ id }) => id === subject.topic);
    const note = `${m.written_title()} · ${m.written_questions({ count: subject.questions })}`;
    return { title: topic ? say(topic.title) : subject.topic, note };
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

/** What an attempt was about, by the id of a method, a family or a topic. */
export function aboutWords({ methods, takeoffs, topics }: Known, about: string): string {
  const found = [...methods, ...takeoffs, ...topics].find(({ id }) => id === about);
  return found ? say(found.title) : about;
}
