/** A job as the office writes it down. */
import { z } from 'zod';
import { isoDateFrom, type IsoDate } from '#engine/calendar.ts';
import { fault, ok, type Result } from '#engine/result.ts';

const most = { roles: 40, people: 99, miles: 9999, needs: 20 } as const;

const line = (length: number) => z.string().trim().min(1).max(length);
const day = z.string().transform((text, context): IsoDate => {
  const read = isoDateFrom(text);
  if (read.ok) return read.value;
  context.addIssue({ code: 'custom', message: 'NOT_A_DAY' });
  return z.NEVER;
});

const roleForm = z.object({
  title: line(80),
  count: z.coerce.number().int().min(1).max(most.people),
  needs: z.array(line(100)).min(1).max(most.needs),
});

const jobForm = z.object({
  title: line(120),
  place: line(120),
  startsOn: day,
  endsOn: day,
  note: z
    .string()
    .trim()
    .max(500)
    .transform((text) => text || null),
  roles: z.array(roleForm).min(1).max(most.roles),
  travel: z.array(
    z.object({ crew: z.string(), miles: z.coerce.number().int().min(0).max(most.miles) }),
  ),
});

export type GivenJob = z.input<typeof jobForm>;
export type ReadJob = z.output<typeof jobForm>;

export const jobFaults = [
  'TITLE_WRONG',
  'PLACE_WRONG',
  'DAYS_WRONG',
  'ROLES_WRONG',
  'TRAVEL_WRONG',
  'NOTE_WRONG',
  'UNKNOWN_QUALIFICATION',
  'UNKNOWN_CREW',
  'ABSENT',
] as const;
export type JobFault = (typeof jobFaults)[number];

const faultOf: Readonly<Record<keyof ReadJob, JobFault>> = {
  title: 'TITLE_WRONG',
  place: 'PLACE_WRONG',
  startsOn: 'DAYS_WRONG',
  endsOn: 'DAYS_WRONG',
  note: 'NOTE_WRONG',
  roles: 'ROLES_WRONG',
  travel: 'TRAVEL_WRONG',
};

export function jobFrom(given: GivenJob, schemes: readonly string[]): Result<ReadJob, JobFault> {
  const read = jobForm.safeParse(given);
  if (!read.success) {
    const field = read.error.issues[0]?.path[0] as keyof ReadJob;
    return fault(faultOf[field]);
  }
  if (read.data.endsOn < read.data.startsOn) return fault('DAYS_WRONG');
  const isKnown = read.data.roles.every(({ needs }) => needs.every((id) => schemes.includes(id)));
  return isKnown ? ok(read.data) : fault('UNKNOWN_QUALIFICATION');
}
