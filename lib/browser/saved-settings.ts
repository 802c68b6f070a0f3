import type { Job } from './messages.ts';

/**
 * What was said about the files, as the command's `--settings` reads it: the same answers next year, here or there.
 *
 * @param task what was done with them
 * @returns JSON with `version` and the options by the command's names; what was left to the defaults is left out
 */
export function settingsText({ read, analyse }: Omit<Job, 'number'>): string {
  const { useOn, worth, samePlants } = analyse ?? {};
  const settings = {
    version: 1,
    ...(read.dateOrder === undefined ? {} : { 'date-order': read.dateOrder }),
    ...(read.map.length === 0 ? {} : { map: read.map.map(([header, column]) => `${header}=${column}`) }),
    ...(samePlants ? { 'same-plants': true } : {}),
    endpoint: read.endpoint,
    ...(worth === undefined ? {} : { worth }),
    ...(useOn === undefined ? {} : { 'use-on': useOn }),
  };
  return `${JSON.stringify(settings, null, 2)}\n`;
}
