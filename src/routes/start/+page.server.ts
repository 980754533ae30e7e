import { fail, redirect } from '@sveltejs/kit';
import { textOf } from '#server/access/text-of.ts';
import { currentContent } from '#server/current-content.ts';
import { demoCompany, demoProgress } from '#server/demo/make-demo.ts';
import { setUpDemo } from '#server/demo/set-up-demo.ts';
import { desk } from '#server/desk.ts';
import { isAnyReal } from '#server/companies/companies.ts';
import { setUp } from '#server/companies/set-up.ts';
import { setUpCode } from '#server/companies/set-up-code.ts';
import { keepCookie } from '#server/logins/keep-cookie.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ url }) => {
  const { database, settings } = await desk();
  const isDone = await isAnyReal(database.db);
  if (!isDone && settings.logLevel !== 'off') {
    const code = await setUpCode(database.db);
    process.stdout.write(
      `To set up the first company at ${url.origin}/start, the code is ${code}\n`,
    );
  }
  const hasDemo = (await demoCompany(database.db)) !== undefined;
  return { isDone, hasDemo, making: demoProgress() };
};

export const actions: Actions = {
  create: async (event) => {
    const form = Object.fromEntries(await event.request.formData());
    const from = {
      address: event.getClientAddress(),
      agent: event.request.headers.get('user-agent') ?? '',
    };
    const made = await setUp(await desk(), form, from, new Date(event.locals.at));
    if (!made.ok) {
      const { company, name, email } = form;
      return fail(400, { fault: made.error, given: { company, name, email } });
    }
    keepCookie(event, made.value.signedIn);
    redirect(303, `/company/${made.value.company}`);
  },

  demo: async (event) => {
    const at = await desk();
    const code = textOf(await event.request.formData(), 'code');
    const now = new Date(event.locals.at);
    const made = await setUpDemo(at, await currentContent(), code, event.getClientAddress(), now);
    return made.ok ? { demo: made.value } : fail(400, { demoFault: made.error });
  },
};
