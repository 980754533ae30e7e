import { render, screen } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, test } from 'vitest';
import { fromText, toText } from '#engine/compile/transport.ts';
import { askedOf, type AskedProblem } from '#engine/takeoff/asked.ts';
import { instanceOf } from '#engine/takeoff/instance.ts';
import type { ProblemAnswer } from '#engine/takeoff/problem-answer.ts';
import ExamProblem from '#ui/exam/ExamProblem.svelte';
import { takeoff } from '../../engine/takeoff/shipped.ts';

/** As it comes from the server. */
function problemOf(family: string): AskedProblem {
  const made = instanceOf(takeoff(family), 7);
  if (!made.ok) throw new Error(made.error.code);
  return fromText(toText(askedOf(made.value))) as AskedProblem;
}

function shown(family: string, given?: ProblemAnswer) {
  const handed: ProblemAnswer[] = [];
  const changed: (ProblemAnswer | undefined)[] = [];
  const problem = problemOf(family);
  const { container } = render(ExamProblem, {
    form: 'answer',
    problem,
    given,
    onanswer: (answer: ProblemAnswer) => handed.push(answer),
    onchange: (answer: ProblemAnswer | undefined) => changed.push(answer),
  });
  const hand = () => container.querySelector('form')!.requestSubmit();
  return { handed, changed, problem, hand, container };
}

describe('a problem of an examination', () => {
  test('is handed in as it was typed, and says how it is read but not what it is worth', async () => {
    const { handed, changed, hand, container } = shown('seam-tape');
    const fields = screen.getAllByRole('textbox');
    expect(fields.length).toBe(2);
    await userEvent.type(fields[0]!, `12 ft 6 1/2"`);
    expect(container.textContent).toContain(`12'-6 1/2"`);
    await userEvent.type(fields[1]!, 'no idea');
    const answers = [
      { part: 'tape', text: `12 ft 6 1/2"`, picked: 'feet-inches' },
      { part: 'rolls', text: 'no idea' },
    ];
    expect(changed.at(-1)?.answers).toMatchObject(answers);
    hand();
    expect(handed).toMatchObject([{ kind: 'problem', answers }]);
    expect(container.textContent).not.toMatch(/Right|Not right|working/i);
  });

  test('shows again what was written, and a decision that was made', () => {
    const { problem } = shown('dew-point', {
      kind: 'problem',
      answers: problemOf('dew-point').parts.map(({ part, answer }) => ({
        part,
        text: answer.kind === 'decision' ? answer.yes.en : '17',
      })),
    });
    const decided = problem.parts.filter(({ answer }) => answer.kind === 'decision').length;
    expect(decided).toBeGreaterThan(0);
    expect(screen.getAllByRole('radio', { checked: true }).length).toBeGreaterThanOrEqual(decided);
    expect(
      screen.queryAllByRole('textbox').map((field) => (field as HTMLInputElement).value),
    ).toEqual(Array(problem.parts.length - decided).fill('17'));
  });

  test('is not handed in with nothing written', async () => {
    const { handed, hand } = shown('seam-tape');
    hand();
    await screen.findByText(/./, { selector: '[role=status] strong' });
    expect(handed).toEqual([]);
  });
});
