import { faultWords } from '#ui/attempts/fault-words.ts';
import { m } from '#ui/messages/generated/messages.js';
import type { Refusal } from './marks.ts';

/** Why one was not taken. */
export function refusalWords(why: Refusal): string {
  if (why === 'NOT_YOURS') return m.sending_not_yours();
  const said = why.map(({ code, path }) =>
    code === 'TOO_LARGE'
      ? m.sending_too_large()
      : [faultWords({ code: code as never, path, message: '' }), path].filter(Boolean).join(': '),
  );
  return said.join(' ');
}

const reasons: Readonly<Record<string, () => string>> = {
  NOT_YOURS: m.sending_work_not_yours,
  NOT_OPEN: m.sending_work_not_open,
  NO_TRIES_LEFT: m.sending_work_no_tries,
  ANOTHER_TASK: m.sending_work_another,
  HELPED: m.sending_work_helped,
};

/** Why it is kept as practice and does not count for the work. */
export const notCountedWords = (reason: string): string =>
  (reasons[reason] ?? m.sending_work_another)();
