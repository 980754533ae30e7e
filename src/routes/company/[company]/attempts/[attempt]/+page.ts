import { isHttpError } from '@sveltejs/kit';
import { openMethod, openTakeoff } from '#ui/content/open-content.ts';
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
  return {
    ...data,
    method: kind === 'mockup' ? await orNone(openMethod(fetch, revision, about)) : undefined,
    takeoff: kind === 'takeoff' ? await orNone(openTakeoff(fetch, revision, about)) : undefined,
  };
};
