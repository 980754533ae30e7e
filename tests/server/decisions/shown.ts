import { freshId } from '#server/fresh-id.ts';
import { content, installer, type Site } from '../checks/examined.ts';

export const examined = ['knowledge', 'quantities', 'practice-walls', 'real-wall'] as const;

type How = {
  readonly on?: string;
  readonly result?: string;
  readonly examiners?: readonly string[];
  readonly released?: boolean;
  readonly scheme?: string;
};

/** A result of a part, as its sitting or its check leaves it. */
export async function shown(
  { db, company, candidate }: Site,
  application: string,
  part: string,
  {
    on = '2030-05-01',
    result = 'passed',
    examiners = [],
    released = true,
    scheme = installer,
  }: How = {},
): Promise<string> {
  const id = freshId();
  const made = `${on}T07:00:00.000Z`;
  await db
    .insertInto('part_result')
    .values({
      id,
      application_id: application,
      company_id: company,
      person_id: candidate.by.person,
      scheme,
      part,
      on_date: on,
      result,
      share: 0.9,
      examiners: JSON.stringify(examiners),
      detail: '{}',
      content_revision: content.revision,
      made_at: made,
      released_at: released ? made : null,
    })
    .execute();
  return id;
}

/** All parts passed, the last by hand before that examiner. */
export async function allShown(on: Site, application: string, examiner: string): Promise<void> {
  for (const part of examined) {
    await shown(on, application, part, { examiners: part === 'real-wall' ? [examiner] : [] });
  }
}
