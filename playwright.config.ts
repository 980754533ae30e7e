import { mkdtempSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { defineConfig, devices } from '@playwright/test';
import { launchBare } from './tests/browser/launch.ts';
import { sizes } from './tests/journeys/sizes.ts';

const freePort = () =>
  new Promise<number>((resolve, reject) => {
    const probe = createServer();
    probe.on('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' && address ? address.port : 0));
    });
  });

// Each worker reads this file again: the first reading chooses for all.
process.env['JOURNEY_PORT'] ??= String(await freePort());
process.env['JOURNEY_DATA'] ??= mkdtempSync(join(tmpdir(), 'underlap-journeys-'));
const address = `http://127.0.0.1:${process.env['JOURNEY_PORT']}`;

export default defineConfig({
  testDir: 'tests/journeys',
  outputDir: 'test-results/journeys',
  fullyParallel: true,
  workers: 2,
  forbidOnly: true,
  // Bounds for what hangs, with room for a machine that has other work.
  timeout: 90_000,
  expect: { timeout: 15_000 },
  reporter: [['list'], ['json', { outputFile: 'test-results/journeys.json' }]],
  use: {
    baseURL: address,
    // What never comes is told at its place, long before the journey's own bound.
    actionTimeout: 40_000,
    navigationTimeout: 40_000,
    locale: 'en-US',
    // Without a film: filming takes a fifth of the time on a machine that draws by processor.
    trace: { mode: 'retain-on-failure', screenshots: false, sources: false },
    // Each journey starts in a fresh browser: what it would keep is never opened again.
    serviceWorkers: 'block',
    launchOptions: launchBare,
  },
  // A journey is made once: on a phone, where there is least room, or at a desk when it needs a keyboard or paper. What
  // proves a layout, a way to press, or that a page is fit for all is made at both. A title says so by @desktop or @both. The
  // journeys of a company, which are long, look at each page in both sizes on their way (isFitEverywhere).
  projects: [
    {
      name: 'phone',
      testIgnore: ['server/**', 'offline/**'],
      grepInvert: /@desktop/,
      use: { ...devices['Pixel 5'], viewport: sizes.phone },
    },
    {
      name: 'desktop',
      testIgnore: ['server/**', 'offline/**'],
      grep: /@desktop|@both/,
      use: { ...devices['Desktop Chrome'], viewport: sizes.desktop },
    },
    { name: 'server', testMatch: 'server/**/*.test.ts' },
    {
      name: 'offline',
      testMatch: 'offline/**/*.test.ts',
      use: {
        ...devices['Pixel 5'],
        viewport: sizes.phone,
        serviceWorkers: 'allow',
      },
    },
  ],
  webServer: {
    command: 'exec node src/server/serve.ts',
    url: address,
    env: {
      PORT: process.env['JOURNEY_PORT'],
      DATA_DIR: process.env['JOURNEY_DATA'],
      LOG_LEVEL: 'error',
    },
    gracefulShutdown: { signal: 'SIGTERM', timeout: 5000 },
    reuseExistingServer: false,
    stdout: 'ignore',
    stderr: 'pipe',
  },
});
