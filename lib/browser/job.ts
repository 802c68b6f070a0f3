import { type AnalyseOptions, analyse } from '../analyse.ts';
import { Failure } from '../command/failure.ts';
import { limitsOf } from '../command/wishes.ts';
import type { CompiledNotebook } from '../notebook/run.ts';
import { readSeason } from '../season/read-season.ts';
import type { Season } from '../season/season.ts';
import type { SeasonSource } from '../season/sheet.ts';
import { writeSeason } from '../season/write-season.ts';
import { refusedOnPage } from '../words/own-settings.ts';
import { seasonAnswer } from '../words/review.ts';
import { firstAnalysis, firstReading } from './first-reading.ts';
import type { Cleaned, Job, Reply } from './messages.ts';
import { type Reading, readingOf } from './reading.ts';
import { drawnReport } from './report-text.ts';
import { sharedCopy } from './shared-copy.ts';

type Tell = (reply: Reply) => void;

/** What was read last. */
interface Kept {
  readonly job: Pick<Job, 'sources' | 'read'>;
  readonly season: Season;
  readonly reading: Reading;
}

function cleanedFiles(season: Season): Cleaned {
  const files = writeSeason(season);
  const text = (file: string) => files.find(({ name }) => name === file)?.text ?? null;
  return { crosses: text('crosses.csv'), vials: text('vials.csv') };
}

function sameSource(a: SeasonSource, b: SeasonSource | undefined): boolean {
  if (b === undefined || a.name !== b.name || a.kind !== b.kind || a.bytes.length !== b.bytes.length)
    return false;
  return a.bytes.every((byte, i) => byte === b.bytes[i]);
}

/** Whether a task reads what has been read already, byte for byte and with the same answers. */
function isRead({ sources, read }: Job, { job }: Kept): boolean {
  return (
    sources.length === job.sources.length &&
    sources.every((source, i) => sameSource(source, job.sources[i])) &&
    JSON.stringify(read) === JSON.stringify(job.read)
  );
}

function readFiles({ sources, read }: Job): Kept {
  const map = new Map(read.map);
  const season = readSeason(sources, { ...read, map, storage: new Map(read.storage) });
  return { job: { sources, read }, season, reading: readingOf(season, map) };
}

async function workOut(
  season: Season,
  options: AnalyseOptions,
  notebook: CompiledNotebook,
  tell: Tell,
): Promise<void> {
  tell({ kind: 'stage', stage: 'counting' });
  const first = firstReading(notebook, season, firstAnalysis(season, options));
  const { parts } = await drawnReport(first.notebook, first.given);
  // A list of three headings would only stand before the answer.
  tell({ kind: 'first', parts: parts.filter((part) => part.startsWith('<section')) });
  const analysis = analyse(season, options, (stage) => tell({ kind: 'stage', stage }));
  tell({ kind: 'stage', stage: 'drawing' });
  const report = await drawnReport(notebook, { season, analysis });
  tell({ kind: 'done', report, answer: seasonAnswer(analysis), cleaned: cleanedFiles(season) });
}

/** What a task asks for beside reading; what only the grower can put right is told as a refusal. */
async function workTask(
  { read, analyse: asked, wishes, share }: Job,
  { season, reading }: Kept,
  notebook: CompiledNotebook,
  tell: Tell,
): Promise<void> {
  if (asked === null) return;
  if (reading.refusal !== null) {
    tell({ kind: 'refused', message: reading.refusal.message });
    return;
  }
  try {
    const options = {
      ...asked,
      ...limitsOf({ ...wishes, ...(asked.samePlants && { samePlants: true }) }, season),
    };
    if (share === null) await workOut(season, options, notebook, tell);
    else tell({ kind: 'shared', ...(await sharedCopy(season, options, share, read, notebook)) });
  } catch (error) {
    if (!(error instanceof Failure)) throw error;
    tell({ kind: 'refused', message: refusedOnPage(error.code, error.details) });
  }
}

/**
 * What does the tasks: reads, tells what was read, counts, draws what counts tell, analyses, draws the report. A fault of
 * the program is told too, never thrown. What was read is kept for the next task.
 *
 * @param notebook the compiled season review
 * @returns a function of a task and of what is called with each stage and each result, in order
 */
export function jobAnswerer(notebook: CompiledNotebook): (job: Job, tell: Tell) => Promise<void> {
  let kept: Kept | null = null;
  return async (job, tell) => {
    try {
      tell({ kind: 'stage', stage: 'reading' });
      if (kept === null || !isRead(job, kept)) kept = readFiles(job);
      tell({ kind: 'read', reading: kept.reading });
      await workTask(job, kept, notebook, tell);
    } catch (error) {
      tell({ kind: 'fault', cause: error instanceof Error ? error.message : String(error) });
    }
  };
}
