/** Where a crew goes wrong: the sums of its people, put together. O(people x spots) beside the queries. */
import type { Content } from '#engine/compile/content.ts';
import type { MethodId } from '#engine/method/method.ts';
import { merged, emptyTally } from '#engine/tally/tally.ts';
import { type Trouble, whereItGoesWrong } from '#engine/tally/where-it-goes-wrong.ts';
import type { Text } from '#engine/text.ts';
import { tallyFrom, type Tallied } from '../attempts/tallied.ts';
import type { Db } from '../database/open-database.ts';
import { type CrewStandings, crewStandings, talliesOf } from './crew-standings.ts';
import { familyTroubles, type FamilyTrouble } from './family-troubles.ts';

/** A method that somebody of the crew has practised. */
type Practised = { readonly id: MethodId; readonly title: Text; readonly attempts: number };

export type CrewInsight = {
  readonly crew: CrewStandings;
  /** The most practised first. */
  readonly methods: readonly Practised[];
  /** The one that was asked for, or else the first of them. */
  readonly method: MethodId | undefined;
  readonly troubles: readonly Trouble[];
  readonly families: readonly FamilyTrouble[];
};

/** Undefined where the company has no such crew. A method that nobody practised counts as none asked for. */
export async function crewInsight(
  db: Db,
  content: Content,
  company: string,
  { crew: id, method: asked }: { readonly crew: string; readonly method?: string | undefined },
): Promise<CrewInsight | undefined> {
  const crew = await crewStandings(db, company, id);
  if (!crew) return undefined;
  const methods = practisedIn(content, crew);
  const chosen = (methods.find((one) => one.id === asked) ?? methods[0])?.id;
  const rows = await talliesOf(db, crew, chosen);
  const method = chosen && content.methods.get(chosen);
  const tally = method
    ? rows
        .filter(({ kind }) => kind === 'mockup')
        .flatMap(({ person, tally }) => tallyFrom(method, person, JSON.parse(tally) as Tallied))
    : [];
  return {
    crew,
    methods,
    method: chosen,
    troubles: whereItGoesWrong(merged(emptyTally, tally)),
    families: familyTroubles(
      content,
      rows.filter(({ kind }) => kind === 'takeoff'),
    ),
  };
}

function practisedIn(content: Content, { people }: CrewStandings): readonly Practised[] {
  const practised = people.flatMap((person) => person.practised);
  const attempts = (method: MethodId): number =>
    practised
      .filter(({ kind, about }) => kind === 'mockup' && about === method)
      .reduce((sum, one) => sum + one.attempts, 0);
  return [...content.methods.values()]
    .map(({ id, title }) => ({ id, title, attempts: attempts(id) }))
    .filter((one) => one.attempts > 0)
    .toSorted((a, b) => b.attempts - a.attempts);
}
