import { analyse } from '../analyse.ts';
import { readSeason } from '../season/read-season.ts';
import type { Season } from '../season/season.ts';
import { writeSeason } from '../season/write-season.ts';
import { firstCounts } from './first-counts.ts';
import type { Cleaned, Job, Reply } from './messages.ts';
import { readingOf } from './reading.ts';

function cleanedFiles(season: Season): Cleaned {
  const files = writeSeason(season);
  const text = (file: string) => files.find(({ name }) => name === file)?.text ?? null;
  return { crosses: text('crosses.csv'), vials: text('vials.csv') };
}

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
      reply({ kind: 'refused', message: reading.refusal.message });
      return;
    }
    reply({ kind: 'stage', stage: 'counting' });
    reply({ kind: 'counts', counts: firstCounts(season, options) });
    const analysis = analyse(season, options, (stage) => reply({ kind: 'stage', stage }));
    reply({ kind: 'done', season, analysis, cleaned: cleanedFiles(season) });
  } catch (error) {
    reply({ kind: 'fault', cause: error instanceof Error ? error.message : String(error) });
  }
}
