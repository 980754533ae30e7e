import type { Content } from '#engine/compile/content.ts';
import { writtenBundle, type WrittenBundle } from '#engine/compile/written-bundle.ts';
import { sendContent } from '../../send-content.server.ts';
import type { RequestHandler } from './$types';

const bundles = new WeakMap<Content, Map<string, WrittenBundle>>();

/** Making its questions takes a good part of a second, and they are the same for everybody. */
function bundleOf(content: Content, id: string): WrittenBundle | undefined {
  const known = bundles.get(content) ?? new Map<string, WrittenBundle>();
  bundles.set(content, known);
  const bundle = known.get(id) ?? writtenBundle(content, id);
  // Only what is there is kept, so that nobody fills it with names.
  if (bundle) known.set(id, bundle);
  return bundle;
}

export const GET: RequestHandler = (event) =>
  sendContent(event, (content) => bundleOf(content, event.params.id));
