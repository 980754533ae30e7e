import { bareBrowser, systemBrowser } from '../../src/setup/browser.js';

const args = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const startOf = (executablePath: string | undefined) => ({
  ...(executablePath === undefined ? {} : { executablePath }),
  args,
});

/** How the browser of the measurements and of the pictures is started: as a person has it. */
export const launch = startOf(systemBrowser());

/** The browser of the journeys, without what a person has around a page: it takes two thirds of the time. */
export const launchBare = startOf(bareBrowser());
