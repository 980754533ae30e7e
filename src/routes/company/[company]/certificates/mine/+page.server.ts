import { fail } from '@sveltejs/kit';
import type { IsoDate } from '#engine/calendar.ts';
import { isNameShown } from '#engine/certificate/name-shown.ts';
import { within } from '#server/access/act.ts';
import { textOf } from '#server/access/text-of.ts';
import { originOf, verifyAddress } from '#server/certificates/addresses.ts';
import { feedKinds, feedsOf, makeFeed, mayFollow } from '#server/certificates/feeds.ts';
import { own } from '#server/certificates/holdings.ts';
import { showName } from '#server/certificates/name-shown.ts';
import { qrOf } from '#server/people/qr.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, url }) => {
  const { db, act, desk } = within(locals);
  const { company, person, roles } = act.by;
  const held = await own(db, company, person, act.at.slice(0, 10) as IsoDate);
  const feeds = await feedsOf(db, person);
  const origin = originOf(desk.settings, url);
  return {
    certificates: held.map((one) => ({ ...one, qr: qrOf(verifyAddress(origin, one.publicId)) })),
    feeds: feedKinds
      .filter((about) => mayFollow(roles, about))
      .map((about) => ({
        about,
        madeAt: feeds.find((feed) => feed.about === about)?.madeAt ?? null,
      })),
  };
};

export const actions = {
  show: async ({ locals, request }) => {
    const { db, act } = within(locals);
    const form = await request.formData();
    const [certificate, shown] = [textOf(form, 'certificate'), textOf(form, 'shown')];
    if (!isNameShown(shown)) return fail(400, { certificate });
    const done = await showName(db, act, certificate, shown);
    return done.ok ? { kept: certificate } : fail(400, { certificate });
  },

  feed: async ({ locals, request, url }) => {
    const { db, act, desk } = within(locals);
    const wanted = textOf(await request.formData(), 'about');
    const about = feedKinds.find((kind) => kind === wanted);
    const secret = about && (await makeFeed(db, act, about));
    if (!about || !secret) return fail(400, {});
    return { about, feed: `${originOf(desk.settings, url)}/calendar/${secret}.ics` };
  },
} satisfies Actions;
