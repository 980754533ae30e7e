/** Everything that must hold before a change is kept; what `npm test` runs. */
import { runStage, type Counts, type Stage } from './stage.ts';

const bin = (path: string): string => `node_modules/${path}`;

const vitest = (file: string) => ({
  file,
  counts: (report: { readonly numPassedTests: number; readonly numFailedTests: number }) => ({
    passed: report.numPassedTests,
    failed: report.numFailedTests,
  }),
});

const vitestStage = (name: string, projects: string): Stage => {
  const report = vitest(`test-results/${name}.json`);
  return {
    name,
    run: [
      bin('vitest/vitest.mjs'),
      'run',
      `--project=${projects}`,
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${report.file}`,
    ],
    report,
  };
};

const playwright = {
  file: 'test-results/journeys.json',
  counts: ({ stats }: { readonly stats: Readonly<Record<'expected' | 'unexpected', number>> }) => ({
    passed: stats.expected,
    failed: stats.unexpected,
  }),
};

// The build comes first: it also makes the types and messages that later stages read.
const build: Stage = { name: 'build', run: ['src/setup/prepare.js', 'build'] };

// The longest first, so that none is left alone at the end.
const readings: readonly Stage[] = [
  { name: 'lint', run: [bin('eslint/bin/eslint.js'), '.', '--max-warnings', '0'] },
  { name: 'types', run: [bin('svelte-check/bin/svelte-check'), '--output', 'human'] },
  { name: 'format', run: [bin('prettier/bin/prettier.cjs'), '--check', '.'] },
  { name: 'worker types', run: [bin('typescript/bin/tsc'), '-p', 'src/service-worker'] },
  {
    name: 'import rules',
    run: [bin('dependency-cruiser/bin/dependency-cruise.mjs'), 'src', 'tests', '-T', 'err-long'],
  },
  { name: 'unused', run: [bin('knip/bin/knip.js')] },
];

const tests = vitestStage('tests', '!faults');
// Killed, filled up, locked and set back: real processes of the build on real databases.
const faults = vitestStage('faults', 'faults');

const browsing: readonly Stage[] = [
  {
    name: 'first load',
    run: [
      'tests/first-load.ts',
      '/',
      '/practise/[method]',
      '/takeoff',
      '/takeoff/[family]',
      '/written/[topic]',
    ],
    figures: true,
  },
  { name: 'journeys', run: [bin('@playwright/test/cli.js'), 'test'], report: playwright },
];

/** Runs stages in order, `width` of them side by side. */
const runAll = async (stages: readonly Stage[], width: number): Promise<readonly Counts[]> => {
  const waiting = [...stages];
  const counts: Counts[] = [];
  const lane = async (): Promise<void> => {
    for (let stage = waiting.shift(); stage; stage = waiting.shift()) {
      counts.push(await runStage(stage));
    }
  };
  await Promise.all(Array.from({ length: width }, lane));
  return counts;
};

const counts = [
  await runStage(build),
  // The faults wait most of their time, for the disk or for a process to start.
  ...(await Promise.all([runAll([...readings, tests], 2), runStage(faults)])).flat(),
  // One after another: each uses every core by itself.
  ...(await runAll(browsing, 1)),
];
const sum = (side: keyof Counts): number => counts.reduce((total, count) => total + count[side], 0);

process.stdout.write(`\n${sum('passed')} passed, ${sum('failed')} failed\n`);
process.exitCode = sum('failed') === 0 ? 0 : 1;
