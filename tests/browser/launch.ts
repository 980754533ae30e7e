import { systemBrowser } from '../../src/setup/browser.js';

const browser = systemBrowser();

/** How the browser of the journeys, of the measurements and of the pictures is started. */
export const launch = {
  ...(browser === undefined ? {} : { executablePath: browser }),
  args: [
    '--no-sandbox',
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
  ],
};
