import { analyse } from '../analyse.ts';
import { readSeason } from '../season/read-season.ts';
import { firstCounts } from './first-counts.ts';
import type { Job, Reply } from './messages.ts';
import { readingOf } from './reading.ts';

/**
 * Does a task: reads, tells what was read, counts, tells the counts, analyses, tells the result. A fault of the program
 * is told too, never thrown.
 *
 * @param job files with their bytes, and how to read and analyse them
 * @param reply called with each stage and each result, in order
 */
export function answerJob({ sources, read, analyse: options }: Job, reply: (reply: Reply) => void): void {
  try {
    reply({ kind: 'stage', stage: 'reading' });
    const map = new Map(read.map);
    const season = readSeason(sources, { ...read, map });
    const reading = readingOf(season, map);
    reply({ kind: 'read', reading });
    if (options === null) return;
    if (reading.refusal !== null) {
      reply({ kind: 'refused', ...reading.refusal });
      return;
    }
    reply({ kind: 'stage', stage: 'counting' });
    reply({ kind: 'counts', counts: firstCounts(season, options) });
    const analysis = analyse(season, options, (stage) => reply({ kind: 'stage', stage }));
    reply({ kind: 'done', season, analysis });
  } catch (error) {
    reply({ kind: 'fault', cause: error instanceof Error ? error.message : String(error) });
  }
}
