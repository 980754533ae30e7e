import { z } from 'zod';
import { languages } from '#engine/text.ts';
import { roles } from '../access/roles.ts';
import { nameForm, numberForm } from './names.ts';

/** A field that may be left empty. */
const orNone = <T>(form: z.ZodType<T, string>) =>
  z
    .string()
    .transform((text) => text.trim())
    .pipe(z.union([z.literal('').transform(() => null), form]));

export const emailForm = z.email().max(200);

/** What the office writes down about somebody. */
export const detailsForm = z.object({
  name: nameForm,
  number: orNone(numberForm),
  language: orNone(z.enum(languages)),
  email: orNone(emailForm),
});

export const rolesForm = z.array(z.enum(roles)).min(1);

export const personForm = detailsForm.extend({
  roles: rolesForm,
  crew: orNone(z.string().max(60)),
});

export type GivenPerson = z.input<typeof personForm>;

export type PersonField = keyof typeof personForm.shape;

/**
 * What stands in the way, by field. `LAST_OFFICE`: nobody else of the office could sign in any more.
 * `ABSENT`: there is no such person or crew in the company, or not any more.
 */
export type PersonFault = {
  readonly field: PersonField;
  readonly code: 'WRONG' | 'TAKEN' | 'LAST_OFFICE' | 'ABSENT';
};

/** The first field that is wrong. */
export const wrongField = (error: z.ZodError): PersonFault => ({
  field: error.issues[0]!.path[0] as PersonField,
  code: 'WRONG',
});
