import { availableParallelism } from 'node:os';
import { svelteTesting } from '@testing-library/svelte/vite';
import { defineConfig } from 'vitest/config';

// Starting a process or walking a machine takes its time where many tests share two cores.
const testTimeout = 30_000;
// By itself it would leave a core to nobody, which is half of a machine with two.
const maxWorkers = availableParallelism();

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          maxWorkers,
          // The engine keeps nothing between calls: its tests may share what they import.
          isolate: false,
          testTimeout,
          environment: 'node',
          include: ['tests/{engine,content,browser}/**/*.test.ts'],
        },
      },
      {
        test: {
          name: 'server',
          maxWorkers,
          isolate: false,
          testTimeout,
          hookTimeout: testTimeout,
          environment: 'node',
          include: ['tests/{server,cli,setup}/**/*.test.ts'],
          globalSetup: ['tests/server/postgres.ts'],
        },
      },
      {
        test: {
          name: 'faults',
          testTimeout: 400_000,
          hookTimeout: testTimeout,
          // Each of them uses what the machine has.
          fileParallelism: false,
          environment: 'node',
          include: ['tests/faults/**/*.test.ts'],
          globalSetup: ['tests/server/postgres.ts'],
        },
      },
      {
        extends: './vite.config.ts',
        plugins: [svelteTesting()],
        test: {
          name: 'dom',
          maxWorkers,
          isolate: false,
          testTimeout,
          environment: 'jsdom',
          include: ['tests/ui/**/*.test.ts'],
          setupFiles: ['tests/ui/setup.ts'],
        },
      },
    ],
  },
});
