import type { Content } from '#engine/compile/content.ts';
import type { Method } from '#engine/method/method.ts';
import { allSites, type Site } from '#engine/method/site.ts';
import { type Language, type Text } from '#engine/text.ts';

/** What a wall is called in the bank: the method, and the answer to each question of its site. */
export const wallName = ({ id, site: questions }: Method, site: Site): string =>
  `${id}:${questions.map(({ id: question }) => site[question]).join(',')}`;

export type SiteFact = { readonly name: Text; readonly value: Text };

/** The site in words, for a list or a title block. */
export const factsOf = ({ site: questions }: Method, site: Site): readonly SiteFact[] =>
  questions.flatMap(({ id, name, values }) => {
    const answer = values.find((value) => value.id === site[id]);
    return answer ? [{ name, value: answer.name }] : [];
  });

/** Every wall that the content can describe, by its name. */
export const wallTexts = ({
  methods,
}: Content): readonly (readonly [string, { readonly ask: Text; readonly topic: Text }])[] =>
  [...methods.values()].flatMap((method) =>
    allSites(method.site).map((site) => {
      const said = (language: Language): string =>
        factsOf(method, site)
          .map(({ name, value }) => `${name[language]}: ${value[language]}`)
          .join(' · ');
      return [
        wallName(method, site),
        { ask: { en: said('en'), es: said('es') }, topic: method.title },
      ] as const;
    }),
  );
