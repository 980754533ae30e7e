/** What a browser sends of what somebody did, and the one door through which it comes in. */
import { isFields } from '#engine/fields.ts';
import { type AttemptFault, refusal } from '#engine/marking/attempt-file.ts';
import { keptFaults, type KeptAttempt } from '#engine/marking/kept-attempt.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { isKeptProblem, type KeptProblem } from '#engine/takeoff/kept-problem.ts';
import { isUuid } from '#engine/uuid.ts';
import { isKeptRun, type KeptRun } from '#engine/written/kept-run.ts';

/** `id` was made on the device: sent twice, it is kept once. `work` is the assigned work it is for. */
export type Sent = { readonly id: string; readonly work: string | undefined } & (
  | { readonly kind: 'mockup'; readonly kept: KeptAttempt }
  | { readonly kind: 'takeoff'; readonly kept: KeptProblem }
  | { readonly kind: 'written'; readonly kept: KeptRun }
);

export const mostAtOnce = 100;

/** A body `{attempts: [...]}`: its parts as they came, or what is wrong with the whole. */
export function sentList(body: unknown): Result<readonly unknown[], AttemptFault> {
  const list = isFields(body) ? body['attempts'] : undefined;
  if (!Array.isArray(list)) {
    const said = 'What is sent is an object with a list "attempts".';
    return fault(refusal('NOT_AN_ATTEMPT', '', said));
  }
  if (list.length > mostAtOnce) {
    return fault(refusal('TOO_MANY_CARDS', 'attempts', `At most ${mostAtOnce} at once are taken.`));
  }
  return ok(list as readonly unknown[]);
}

/** An identifier of an earlier form, 32 digits without dashes, is the same identifier. */
function idFrom(kept: unknown): string | undefined {
  const given = isFields(kept) ? kept['id'] : undefined;
  const dashed =
    typeof given === 'string' && /^[0-9a-f]{32}$/.test(given)
      ? given.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5')
      : given;
  return isUuid(dashed) ? dashed : undefined;
}

/** One of the list, right in its form, or every fault with its place. */
export function sentFrom(one: unknown): Result<Sent, readonly AttemptFault[]> {
  if (!isFields(one)) {
    return fault([refusal('NOT_AN_ATTEMPT', '', 'An attempt is sent as {kind, kept}.')]);
  }
  const { kind, kept, work } = one;
  const id = idFrom(kept);
  const faults: AttemptFault[] = [];
  if (!id) faults.push(refusal('WRONG_TYPE', 'kept.id', 'An attempt has a UUID for its id.'));
  if (work !== undefined && !isUuid(work)) {
    faults.push(refusal('WRONG_TYPE', 'work', 'Assigned work is named by its UUID.'));
  }
  faults.push(...faultsOfKept(kind, kept));
  if (faults.length > 0 || !id) return fault(faults);
  const sent = { id, work: work as string | undefined };
  if (kind === 'mockup') return ok({ ...sent, kind, kept: kept as KeptAttempt });
  return kind === 'written'
    ? ok({ ...sent, kind, kept: kept as KeptRun })
    : ok({ ...sent, kind: 'takeoff', kept: kept as KeptProblem });
}

function faultsOfKept(kind: unknown, kept: unknown): readonly AttemptFault[] {
  if (kind === 'mockup') return keptFaults(kept, 'kept');
  const strange = (what: string) => [refusal('NOT_AN_ATTEMPT', 'kept', `This is not ${what}.`)];
  if (kind === 'takeoff') return isKeptProblem(kept) ? [] : strange('a kept problem');
  if (kind === 'written') return isKeptRun(kept) ? [] : strange('a kept run of questions');
  return [refusal('WRONG_TYPE', 'kind', 'The kind is "mockup", "takeoff" or "written".')];
}
