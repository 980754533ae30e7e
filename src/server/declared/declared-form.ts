/** A certificate that somebody else issued, as the office writes it down. */
import { z } from 'zod';
import { isoDateFrom, type IsoDate } from '#engine/calendar.ts';
import type { DeclaredFault } from '#engine/record/declared.ts';
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

type Field = keyof GivenDeclared;

/** `AHEAD`: it was issued later than today. `BEFORE_ISSUE`: it ended before it began. */
export type FieldFault = {
  readonly field: Field;
  readonly code: 'WRONG' | 'UNKNOWN_SCHEME' | 'NOT_A_DAY' | 'AHEAD' | 'BEFORE_ISSUE';
};

const isDay = (field: Field): boolean => field === 'issuedOn' || field === 'validUntil';

type Rules = { readonly schemes: readonly string[]; readonly today: string };

/** What was issued cannot lie ahead, nor have ended before it began. Everything that is wrong with it. */
export function readDeclared(
  given: GivenDeclared,
  { schemes, today }: Rules,
): Result<ReadDeclared, readonly FieldFault[]> {
  const read = form.safeParse(given);
  const wrong = new Set((read.error?.issues ?? []).map(({ path }) => path[0] as Field));
  const faults = [...wrong].map((field): FieldFault => ({
    field,
    code: isDay(field) ? 'NOT_A_DAY' : 'WRONG',
  }));
  const dayIn = (field: 'issuedOn' | 'validUntil'): string | undefined =>
    wrong.has(field) ? undefined : given[field].trim() || undefined;
  const [issued, until] = [dayIn('issuedOn'), dayIn('validUntil')];
  const { scheme } = given;
  if (scheme !== '' && !schemes.includes(scheme)) {
    faults.push({ field: 'scheme', code: 'UNKNOWN_SCHEME' });
  }
  if (issued && issued > today) faults.push({ field: 'issuedOn', code: 'AHEAD' });
  if (issued && until && until < issued) faults.push({ field: 'validUntil', code: 'BEFORE_ISSUE' });
  return read.success && faults.length === 0 ? ok(read.data) : fault(faults);
}

/** By the first field that is wrong. */
export function declaredFrom(
  given: GivenDeclared,
  rules: Rules,
): Result<ReadDeclared, DeclaredFault> {
  const read = readDeclared(given, rules);
  return read.ok ? read : fault(read.error[0]!.field);
}
