import type { TestVerdict } from '#engine/statistics/test-verdict.ts';
import { m } from '#ui/messages/generated/messages.js';

/** Whether a form tells people apart, in the words of a site. */
export function formWords(verdict: TestVerdict): string {
  switch (verdict.standing) {
    case 'too-few-persons':
      return m.numbers_form_few({ have: verdict.have, need: verdict.need });
    case 'nothing-to-tell':
      return m.numbers_form_nothing();
    case 'tells-people-apart':
      return m.numbers_form_apart();
    case 'unsure':
      return m.numbers_form_unsure();
    case 'does-not-tell-people-apart':
      return m.numbers_form_hardly();
  }
}
