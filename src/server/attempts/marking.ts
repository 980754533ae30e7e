/** Marks what was sent by its steps and answers: what the browser made of them is never believed. */
import type { Content } from '#engine/compile/content.ts';
import { type AttemptFault, refusal } from '#engine/marking/attempt-file.ts';
import type { KeptAttempt } from '#engine/marking/kept-attempt.ts';
import { markKept } from '#engine/marking/kept-review.ts';
import { instanceOf } from '#engine/takeoff/instance.ts';
import type { KeptProblem } from '#engine/takeoff/kept-problem.ts';
import { markProblem, type MarkedProblem } from '#engine/takeoff/mark-kept.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import type { TopicId } from '#engine/written/question.ts';
import type { KeptRun } from '#engine/written/kept-run.ts';
import { markRun, type MarkedRun } from '#engine/written/run.ts';
import type { Sent } from './sent.ts';
import { shelfOf } from './shelf.ts';
import { ofProblem, ofReview, ofRun, type Tallied } from './tallied.ts';

/** An attempt with its mark, ready to be kept. */
export type Marked = {
  /** The method, the family or the topic. */
  readonly about: string;
  readonly finishedAt: string;
  readonly played: object;
  readonly contentRevision: string;
  readonly sheetRevision: string | null;
  readonly score: number;
  readonly outcome: string;
  readonly detail: object;
  /** What it adds to the standing of whoever made it. */
  readonly tally: Tallied;
};

type Outcome = Result<Marked, readonly AttemptFault[]>;

export function markSent(content: Content, sent: Sent): Outcome {
  if (sent.kind === 'mockup') return markMockup(content, sent.kept);
  return sent.kind === 'written'
    ? markWritten(content, sent.kept)
    : markTakeoff(content, sent.kept);
}

const instant = (text: string): string => new Date(text).toISOString();

function markMockup(content: Content, kept: KeptAttempt): Outcome {
  const marked = markKept(kept, shelfOf(content));
  if (!marked.ok) return marked;
  const { attempt, review, score } = marked.value;
  const { method, dataSheet } = attempt.sequence;
  return ok({
    about: method.id,
    finishedAt: instant(kept.finished),
    played: playedOf(kept),
    contentRevision: content.revision,
    sheetRevision: content.sheetRevisions.get(dataSheet.id) ?? null,
    score,
    outcome: review.outcome,
    detail: {
      items: review.items.map(({ kind, card, severity, points }) => [kind, card, severity, points]),
    },
    // What was told while building is no sign of knowing, or of not knowing.
    tally: kept.mode === 'own' ? ofReview({ attempt, review }) : {},
  });
}

/** What was done, without what the browser made of it. */
function playedOf(kept: KeptAttempt): object {
  const { id: _id, work: _work, score: _score, outcome: _outcome, ...played } = kept;
  return played;
}

function markTakeoff(content: Content, kept: KeptProblem): Outcome {
  const takeoff = shelfOf(content).takeoffOf(kept.family);
  if (!takeoff) {
    const said = `There is no family of problems "${kept.family.slice(0, 80)}".`;
    return fault([refusal('UNKNOWN_METHOD', 'kept.family', said)]);
  }
  const instance = instanceOf(takeoff, kept.seed);
  const marked = instance.ok ? markProblem(instance.value, kept) : undefined;
  if (!marked?.ok) {
    const place = marked ? `kept.answers of "${marked.error.part}"` : 'kept.seed';
    const said = 'This answer was not given to this problem as it is today.';
    return fault([refusal('BAD_QUANTITY', place, said)]);
  }
  const { family: _family, revision, sheetRevision, seed, form, answers } = kept;
  return ok({
    about: kept.family,
    finishedAt: instant(kept.at),
    played: {
      family: kept.family,
      seed,
      form,
      revision,
      sheetRevision,
      answers: answers.map(({ part, tries, shown }) => ({ part, tries, shown })),
    },
    contentRevision: content.revision,
    sheetRevision: content.sheetRevisions.get(takeoff.sheet.id) ?? null,
    score: marked.value.score,
    outcome: outcomeOf(marked.value),
    detail: { parts: marked.value.parts.map(({ part, verdict }) => [part, verdict?.kind ?? null]) },
    tally: ofProblem(kept.family, marked.value),
  });
}

function markWritten(content: Content, kept: KeptRun): Outcome {
  const topic = content.topics.get(kept.topic as TopicId);
  if (!topic) {
    const said = `There is no topic "${kept.topic.slice(0, 80)}".`;
    return fault([refusal('UNKNOWN_METHOD', 'kept.topic', said)]);
  }
  const { revision } = content;
  const marked = markRun(topic, kept, { shelf: shelfOf(content), revision });
  if (!marked.ok) {
    return fault(marked.error.map(({ path, message }) => refusal('BAD_QUANTITY', path, message)));
  }
  const { id: _id, at: _at, work: _work, ...played } = kept;
  return ok({
    about: topic.id,
    finishedAt: instant(kept.at),
    played,
    contentRevision: revision,
    sheetRevision: null,
    score: marked.value.score,
    outcome: outcomeOf(marked.value),
    detail: {
      answers: marked.value.answers.map(({ question, verdict }) => [
        question.id,
        verdict?.outcome ?? null,
      ]),
    },
    tally: ofRun(topic.id, marked.value),
  });
}

const outcomeOf = ({ score }: Pick<MarkedProblem | MarkedRun, 'score'>): string =>
  score === 100 ? 'right' : score > 0 ? 'partly right' : 'not right';
