import { error } from '@sveltejs/kit';
import { within } from '#server/access/act.ts';
import { originOf } from '#server/certificates/addresses.ts';
import { paperOf } from '#server/certificates/downloads.ts';
import { issued } from '#server/certificates/issued.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = async ({ params, locals, url }) => {
  const { db, act, desk } = within(locals);
  const origin = originOf(desk.settings, url);
  const paper = await paperOf(db, act.by, params.certificate, origin);
  const signing = { origin, keys: desk.settings.keys, at: act.at };
  const credential = paper && (await issued(db, signing, params.certificate));
  if (!paper || credential === undefined) error(404);
  return new Response(credential, {
    headers: {
      'content-type': 'application/jwt',
      'content-disposition': `attachment; filename="certificate-${paper.scope.scheme}.jwt"`,
    },
  });
};
