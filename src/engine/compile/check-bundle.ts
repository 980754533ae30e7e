import type { HandsOnPart, SchemeId } from '#engine/exam/scheme.ts';
import type { DataSheet } from '#engine/method/data-sheet.ts';
import type { HazardId, Method } from '#engine/method/method.ts';
import { sequenceOf, type Sequence } from '#engine/method/sequence.ts';
import { siteFrom, type Site } from '#engine/method/site.ts';
import type { Text } from '#engine/text.ts';
import type { Content, Hazard } from './content.ts';
import { methodBundle } from './method-bundle.ts';

/**
 * What a hands-on check is judged by, whole: kept beside the check, so that it opens without signal, and so
 * that what was signed reads the same years later, whatever the content says by then.
 */
export type CheckBundle = {
  readonly revision: string;
  readonly sheetRevision: string;
  readonly scheme: { readonly id: SchemeId; readonly title: Text; readonly note: Text };
  readonly part: HandsOnPart;
  readonly method: Method;
  readonly dataSheet: DataSheet;
  readonly hazards: ReadonlyMap<HazardId, Hazard>;
  readonly site: Site;
};

/** Undefined where there is no such part, or it is no hands-on check. */
export function checkBundle(
  content: Content,
  scheme: string,
  part: string,
): CheckBundle | undefined {
  const found = content.schemes.get(scheme as SchemeId);
  const asked = found?.parts.find(({ id }) => id === part);
  if (!found || asked?.kind !== 'hands-on') return undefined;
  const bundle = methodBundle(content, asked.method);
  const site = bundle && siteFrom(bundle.method.site, asked.site);
  if (!site?.ok) return undefined;
  const { revision, sheetRevision, method, dataSheet, hazards } = bundle!;
  const { id, title, note } = found;
  return {
    revision,
    sheetRevision,
    scheme: { id, title, note },
    part: asked,
    method,
    dataSheet,
    hazards,
    site: site.value,
  };
}

/** Throws where the compiler would have complained. */
export function checkedSequence({ method, dataSheet, site }: CheckBundle): Sequence {
  const sequence = sequenceOf(method, dataSheet, site);
  if (!sequence.ok)
    throw new Error(`The method ${method.id} makes no sequence: ${sequence.error.code}`);
  return sequence.value;
}
