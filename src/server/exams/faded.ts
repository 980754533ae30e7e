/** What has faded of somebody's knowledge, for the form by which they renew. */
import type { Content } from '#engine/compile/content.ts';
import { fadedTopics } from '#engine/competence/faded-topics.ts';
import type { Faded } from '#engine/exam/leaning.ts';
import type { Db } from '../database/open-database.ts';
import { points } from '../insight/points.ts';
import type { Act } from '../people/member.ts';
import { application } from './applications.ts';
import { dayOf } from './past.ts';

/** By topic, from the walls that they built; undefined where the application is not for renewing. */
export async function fadedIn(
  db: Db,
  content: Content,
  { by, at }: Act,
  id: string,
): Promise<Faded | undefined> {
  const made = await application(db, by.company, id);
  if (!made?.renews) return undefined;
  const shown = await points(db, content, by.company, made.person);
  return fadedTopics(content.topics.values(), shown, dayOf(at));
}
