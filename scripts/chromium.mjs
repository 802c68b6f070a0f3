// Where Chromium is: FRUITODDS_CHROMIUM, or one of the usual places.

import { existsSync } from 'node:fs';

const places = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

/** Path of the browser that the tests of finished pages use; null where there is none. */
export function findChromium() {
  const named = process.env.FRUITODDS_CHROMIUM;
  const found = (named ? [named] : places).find((path) => existsSync(path));
  return found ?? null;
}

export const howToGetChromium =
  'Get it (Debian: apt-get update && apt-get install -y chromium), or set FRUITODDS_CHROMIUM=/path/to/chromium.';
