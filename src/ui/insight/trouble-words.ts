import type { Method, StepId } from '#engine/method/method.ts';
import { allSites, holds, type Site } from '#engine/method/site.ts';
import { type Spot } from '#engine/tally/spot.ts';
import { say } from '#ui/language/language.svelte.ts';
import { m } from '#ui/messages/generated/messages.js';
import { siteAddress } from '#ui/reading/site-address.ts';

const stepWords = ({ steps }: Method, id: StepId): string => {
  const step = steps.find((one) => one.id === id);
  return step ? say(step.say) : id;
};

/** What went wrong there. */
export function troubleWords(method: Method, spot: Spot): string {
  switch (spot.kind) {
    case 'order':
      return m.trouble_order({
        before: stepWords(method, spot.before),
        after: stepWords(method, spot.after),
      });
    case 'wait':
      return m.trouble_wait({ step: stepWords(method, spot.step) });
    case 'setting':
      return m.trouble_setting({ step: stepWords(method, spot.step) });
    case 'step':
      return m.trouble_step({ step: stepWords(method, spot.step) });
  }
}

/** What is asked where a value is set; undefined elsewhere. */
export function askWords({ steps }: Method, spot: Spot): string | undefined {
  if (spot.kind !== 'setting') return undefined;
  const step = steps.find(({ id }) => id === spot.step);
  const setting = step?.settings.find(({ id }) => id === spot.setting);
  return setting && say(setting.ask);
}

export const stepOf = (spot: Spot): StepId => (spot.kind === 'order' ? spot.after : spot.step);

/** Where the step is taught: on the given wall, or on the most usual one that has it. */
export function stepAddress(method: Method, site: Site, id: StepId): string {
  const step = method.steps.find((one) => one.id === id);
  const has = (wall: Site): boolean => step !== undefined && holds(step.when, wall);
  const wall = has(site) ? site : (allSites(method.site).find(has) ?? site);
  return `${siteAddress(`/methods/${encodeURIComponent(method.id)}`, wall)}#${id}`;
}
