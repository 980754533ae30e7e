/** A certificate that somebody else issued, as the office writes it down. */
import { z } from 'zod';
import { isoDateFrom, type IsoDate } from '#engine/calendar.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { nameForm } from '../people/names.ts';

const day = z.string().transform((text, context): IsoDate => {
  const read = isoDateFrom(text.trim());
  if (read.ok) return read.value;
  context.addIssue({ code: 'custom', message: 'NOT_A_DAY' });
  return z.NEVER;
});

const orNothing = <T>(form: z.ZodType<T, string>) =>
  z.union([z.literal('').transform(() => null), form]);

const form = z.object({
  title: nameForm,
  issuer: nameForm,
  number: orNothing(nameForm),
  scheme: orNothing(z.string()),
  issuedOn: day,
  validUntil: orNothing(day),
});

export type GivenDeclared = z.input<typeof form>;
export type ReadDeclared = z.output<typeof form>;

/** By the field that cannot be used. `ABSENT`: there is no such person or certificate in the company. */
export const declaredFaults = [
  'title',
  'issuer',
  'number',
  'scheme',
  'issuedOn',
  'validUntil',
  'reason',
  'ABSENT',
] as const;
export type DeclaredFault = (typeof declaredFaults)[number];

/** What was issued cannot lie ahead, nor have ended before it began. */
export function declaredFrom(
  given: GivenDeclared,
  { schemes, today }: { readonly schemes: readonly string[]; readonly today: string },
): Result<ReadDeclared, DeclaredFault> {
  const read = form.safeParse(given);
  if (!read.success) return fault(read.error.issues[0]?.path[0] as keyof ReadDeclared);
  const { scheme, issuedOn, validUntil } = read.data;
  if (scheme !== null && !schemes.includes(scheme)) return fault('scheme');
  if (issuedOn > today) return fault('issuedOn');
  if (validUntil !== null && validUntil < issuedOn) return fault('validUntil');
  return ok(read.data);
}
