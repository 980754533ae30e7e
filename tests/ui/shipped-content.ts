import { type MethodBundle, methodBundle } from '#engine/compile/method-bundle.ts';
import { writtenBundle } from '#engine/compile/written-bundle.ts';
import type { Shelf } from '#engine/marking/attempt-from.ts';
import { sequenceOf, type Sequence } from '#engine/method/sequence.ts';
import { siteFrom } from '#engine/method/site.ts';
import { openContent } from '#server/content.ts';

const content = openContent();

export function shippedBundle(method: string): MethodBundle {
  const bundle = methodBundle(content, method);
  if (!bundle) throw new Error(`No method ${method} is shipped.`);
  return bundle;
}

export function shippedSequence(
  id: string,
  answers: Readonly<Record<string, string>> = {},
): Sequence {
  const { method, dataSheet } = shippedBundle(id);
  const site = siteFrom(method.site, answers);
  const sequence = site.ok && sequenceOf(method, dataSheet, site.value);
  if (!sequence || !sequence.ok) throw new Error(`No such wall of ${id}.`);
  return sequence.value;
}

export const shippedMethods: readonly string[] = [...content.methods.keys()];

/** A topic as its page gets it, with the shelf that the page puts together. */
export function shippedTopic(id: string) {
  const bundle = writtenBundle(content, id);
  if (!bundle) throw new Error(`No topic ${id} is shipped.`);
  const shown = bundle.drawnOn.map(shippedBundle);
  const shelf: Shelf = {
    methods: new Map(shown.map(({ method }) => [method.id, method])),
    dataSheets: new Map([
      ...bundle.dataSheets,
      ...shown.map(({ dataSheet }) => [dataSheet.id, dataSheet] as const),
    ]),
  };
  return { bundle, shown, shelf };
}
