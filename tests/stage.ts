import { spawn } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { stripVTControlCharacters } from 'node:util';

/** How many tests a stage ran to which end. */
export type Counts = { readonly passed: number; readonly failed: number };

export type Stage = {
  readonly name: string;
  /** What to run: a script and its arguments, under the Node that runs this. */
  readonly run: readonly string[];
  /** The report a test runner leaves behind, and how to read its counts; other stages have none. */
  readonly report?: { readonly file: string; readonly counts: (report: never) => Counts };
  /** Shows what it printed also when all is well. */
  readonly figures?: boolean;
};

const print = (text: string): boolean => process.stdout.write(`${text}\n`);

const output = (args: readonly string[]): Promise<{ code: number | null; text: string }> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, args, {
      env: { ...process.env, CI: '1' },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let text = '';
    child.stdout.on('data', (chunk: Buffer) => (text += chunk.toString()));
    child.stderr.on('data', (chunk: Buffer) => (text += chunk.toString()));
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, text: stripVTControlCharacters(text).trim() }));
  });

/**
 * Runs one stage and prints a line on it. A stage that fails with no failing test to show for it
 * (a type error, a test file that does not load) counts as one failure.
 */
export const runStage = async ({ name, run, report, figures }: Stage): Promise<Counts> => {
  if (report) rmSync(report.file, { force: true });
  const start = performance.now();
  const { code, text } = await output(run);
  const seconds = ((performance.now() - start) / 1000).toFixed(1).padStart(6);

  const counted =
    report && existsSync(report.file)
      ? report.counts(JSON.parse(readFileSync(report.file, 'utf8')) as never)
      : { passed: 0, failed: 0 };
  const ok = code === 0 && counted.failed === 0 && (!report || counted.passed > 0);
  const told = report ? `  ${counted.passed} passed, ${counted.failed} failed` : '';
  print(`${ok ? 'ok    ' : 'FAILED'} ${name.padEnd(14)} ${seconds} s${told}`);
  if (!ok || figures) print(text.replace(/^/gm, '         '));
  return { passed: counted.passed, failed: ok ? 0 : Math.max(1, counted.failed) };
};
