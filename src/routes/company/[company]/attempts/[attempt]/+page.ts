import { isHttpError } from '@sveltejs/kit';
import { openMethod, openTakeoff, openWritten } from '#ui/content/open-content.ts';
import type { PageLoad } from './$types';

const orNone = <T>(opening: Promise<T>): Promise<T | undefined> =>
  opening.catch((failed: unknown) => {
    if (isHttpError(failed, 404)) return undefined;
    throw failed;
  });

/** The attempt with today's content of its method or family, where there still is one. */
export const load: PageLoad = async ({ data, fetch, parent }) => {
  const { revision } = await parent();
  const { about, kind } = data.attempt;
  const written = async () => {
    const bundle = await openWritten(fetch, revision, about);
    const shown = await Promise.all(bundle.drawnOn.map((id) => openMethod(fetch, revision, id)));
    return { bundle, shown };
  };
  return {
    ...data,
    method: kind === 'mockup' ? await orNone(openMethod(fetch, revision, about)) : undefined,
    written: kind === 'written' ? await orNone(written()) : undefined,
    takeoff: kind === 'takeoff' ? await orNone(openTakeoff(fetch, revision, about)) : undefined,
  };
};
