import type { Drawing, ViewId } from '#engine/picture/drawing.ts';

/** The view to show first: the one that names what was chosen, or else what was done last. */
export function viewOf({ views, parts }: Drawing, selected: string | undefined): ViewId {
  const last = parts.findLast(({ card }) => card !== undefined);
  const wanted = selected ?? last?.id;
  const showing = views.find(({ keynotes }) => keynotes.some(({ part }) => part === wanted));
  return showing?.id ?? views[0]?.id ?? 'section';
}
