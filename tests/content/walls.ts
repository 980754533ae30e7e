import { openContent } from '#server/content.ts';
import { allSites } from '#engine/method/site.ts';
import { type Sequence, sequenceOf } from '#engine/method/sequence.ts';

export const content = openContent();

export type Wall = { readonly name: string; readonly sequence: Sequence };

/** Every wall that the shipped methods know, named `method question=value ...`. */
export const walls: readonly Wall[] = [...content.methods.values()].flatMap((method) =>
  allSites(method.site).map((site) => {
    const sequence = sequenceOf(method, content.dataSheets.get(method.dataSheet)!, site);
    if (!sequence.ok) throw new Error(`${method.id}: ${sequence.error.code}`);
    const answers = Object.entries(site).map(([question, value]) => `${question}=${value}`);
    return { name: [method.id, ...answers].join(' '), sequence: sequence.value };
  }),
);
