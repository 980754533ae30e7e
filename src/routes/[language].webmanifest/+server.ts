import { error, json } from '@sveltejs/kit';
import { languages } from '#engine/text.ts';
import { manifestIn } from '#ui/offline/manifest.ts';
import type { EntryGenerator, RequestHandler } from './$types';

export const prerender = true;

export const entries: EntryGenerator = () => languages.map((language) => ({ language }));

export const GET: RequestHandler = ({ params }) => {
  const language = languages.find((known) => known === params.language);
  if (!language) error(404, 'No such language.');
  return json(manifestIn(language), {
    headers: { 'content-type': 'application/manifest+json' },
  });
};
