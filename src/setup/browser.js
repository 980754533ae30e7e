import { existsSync } from 'node:fs';
import { installWithApt, programAt } from './debian.js';
import { runtime } from './runtime.js';
import { run, secondsSince, tell } from './run.js';

const whole = 'chromium';
const bare = 'chromium-headless-shell';

/** The machine's own Chromium: the one CHROMIUM names, or Debian's. */
export const systemBrowser = () => process.env['CHROMIUM'] ?? programAt(whole);

/** The same without the windows, menus and settings that a person has of it, where there is one. */
export const bareBrowser = () => process.env['CHROMIUM'] ?? programAt(bare) ?? programAt(whole);

// Says nothing and returns at once when it is there already.
const installBesidePackages = () =>
  run(runtime(), ['node_modules/@playwright/test/cli.js', 'install', 'chromium']);

/** Where Debian keeps letters as wide as the sheets are laid out for. */
const letters = '/usr/share/fonts/truetype/liberation';

/** Sheets of paper are counted in the journeys: with wider letters there would be more of them. */
function installLetters() {
  if (process.platform !== 'linux' || existsSync(letters)) return;
  if (installWithApt(['fonts-liberation'])) tell('Fonts installed with apt-get.');
}

/**
 * Sees to a browser for the journeys. Where none can be had it says so and goes on: the other
 * stages are still worth running, and the journeys will fail.
 */
export function installBrowser() {
  installLetters();
  if (process.env['CHROMIUM'] || (programAt(whole) && programAt(bare))) return;
  const start = Date.now();
  if (installWithApt([whole, bare, 'fonts-dejavu-core'])) {
    return tell(`Chromium installed with apt-get in ${secondsSince(start)}.`);
  }
  if (programAt(whole)) return;
  if (installBesidePackages()) return;
  tell(
    'No browser could be installed, so the journeys cannot run. Install Chromium (on Debian:\n' +
      'apt-get install chromium) or name one: CHROMIUM=/path/to/chromium npm test',
  );
}
