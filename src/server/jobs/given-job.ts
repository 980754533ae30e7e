/** A job as a form sends it: roles by number, the way of each crew by its id. Roles without a name are left out. */
import { textOf } from '../access/text-of.ts';
import type { GivenJob } from './job-form.ts';

const most = 40;

export function givenJob(form: FormData): GivenJob {
  const roles = Array.from({ length: most }, (_, at) => ({
    title: textOf(form, `role-${at}-title`),
    count: textOf(form, `role-${at}-count`),
    needs: form.getAll(`role-${at}-needs`).map(String),
  })).filter(({ title, needs }) => title.trim() !== '' || needs.length > 0);
  const travel = [...form.keys()]
    .filter((name) => name.startsWith('miles-') && textOf(form, name).trim() !== '')
    .map((name) => ({ crew: name.slice('miles-'.length), miles: textOf(form, name) }));
  return {
    title: textOf(form, 'title'),
    place: textOf(form, 'place'),
    startsOn: textOf(form, 'startsOn'),
    endsOn: textOf(form, 'endsOn'),
    note: textOf(form, 'note'),
    roles,
    travel,
  };
}
