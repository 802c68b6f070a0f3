/** The same fits in R, timed by R itself without reading the data. */

import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BenchCase } from './cases.ts';
import { type BenchData, csv } from './data.ts';

export interface RTimes {
  /** Median of the runs, in seconds. */
  readonly seconds: number;
  readonly check: number;
  /** R and its packages with their versions. */
  readonly versions: string;
}

/** One fit to warm up, then as many as go into two seconds, three at least. */
const script = (file: string, { packages, fit, check }: NonNullable<BenchCase['r']>): string => `
${packages.map((name) => `suppressMessages(library(${name}))`).join('\n')}
d <- read.csv(${JSON.stringify(file)}, stringsAsFactors = TRUE)
run <- function() ${fit}
fit <- run()
seconds <- numeric(0)
while (length(seconds) < 3 || (sum(seconds) < 2 && length(seconds) < 50)) {
  gc(FALSE)
  start <- Sys.time()
  fit <- run()
  seconds <- c(seconds, as.numeric(difftime(Sys.time(), start, units = "secs")))
}
versions <- c(paste("R", getRversion())${packages.map((name) => `, paste("${name}", packageVersion("${name}"))`).join('')})
cat(sprintf("%.17g\\n%.17g\\n%s\\n", median(seconds), ${check}, paste(versions, collapse = ", ")))
`;

export function hasR(): boolean {
  return spawnSync('Rscript', ['--version']).status === 0;
}

/** Runs R's side of a case; null where it has none or R lacks the package. */
export function timeR({ r }: BenchCase, data: BenchData, folder: string): RTimes | null {
  if (r === undefined) return null;
  const file = join(folder, 'data.csv');
  const program = join(folder, 'case.R');
  writeFileSync(file, csv(data));
  writeFileSync(program, script(file, r));
  const { status, stdout, stderr } = spawnSync('Rscript', ['--vanilla', program], { encoding: 'utf8' });
  if (status !== 0) {
    console.error(`R: ${stderr.trim()}`);
    return null;
  }
  const [seconds, check, versions] = stdout.trim().split('\n');
  return { seconds: Number(seconds), check: Number(check), versions: versions! };
}
