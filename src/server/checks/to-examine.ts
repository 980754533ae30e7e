import type { Content } from '#engine/compile/content.ts';
import type { SchemeId } from '#engine/exam/scheme.ts';
import type { Text } from '#engine/text.ts';
import type { Db } from '../database/open-database.ts';
import { list, partsFor } from '../exams/applications.ts';
import type { Act } from '../people/member.ts';
import { type ExamineFault, mayExamine } from './may-examine.ts';

export type ToExamine = {
  readonly application: string;
  readonly candidateName: string;
  readonly scheme: SchemeId;
  readonly schemeTitle: Text;
  readonly part: string;
  readonly partTitle: Text;
  /** Somebody is at it already, and wants a second examiner. */
  readonly isSecond: boolean;
  /** Why not, or not by this person; undefined where they may begin. */
  readonly kept: ExamineFault | undefined;
};

/** Every check by hand that open applications still want, a page of them at a time. */
export async function toExamine(
  db: Db,
  act: Act,
  content: Content,
  after?: string,
): Promise<{ readonly wanted: readonly ToExamine[]; readonly next: string | undefined }> {
  const page = await list(db, act.by.company, { when: 'open', ...(after ? { after } : {}) });
  const wanted: ToExamine[] = [];
  for (const application of page.applications) {
    const scheme = content.schemes.get(application.scheme);
    const parts = scheme ? partsFor(scheme, application) : [];
    for (const part of parts.filter(({ kind }) => kind === 'hands-on')) {
      const may = await mayExamine(db, act, content, application, part.id);
      if (may.ok && may.value.mine) continue;
      if (!may.ok && may.error.code === 'NOT_NOW' && may.error.state.kind === 'passed') continue;
      wanted.push({
        application: application.id,
        candidateName: application.personName,
        scheme: application.scheme,
        schemeTitle: scheme!.title,
        part: part.id,
        partTitle: part.title,
        isSecond: may.ok && may.value.places.length > 0,
        kept: may.ok ? undefined : may.error,
      });
    }
  }
  return { wanted, next: page.next };
}
