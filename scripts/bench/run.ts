/** Runs the cases and prints a line each; or their peak memory at growing numbers of rows. */

import { spawnSync } from 'node:child_process';
import { cpus } from 'node:os';
import { Bench } from 'tinybench';
import { type BenchCase, CASES } from './cases.ts';
import { hasR, type RTimes, timeR } from './r-side.ts';

export { importTimes } from './import.ts';

export interface TimesOptions {
  /** Only the cases whose name holds this word. */
  readonly word: string;
  readonly withR: boolean;
  /** Where the data for R go. */
  readonly folder: string;
}

const withWord = (word: string): readonly BenchCase[] => CASES.filter(({ name }) => name.includes(word));

/** Times our side and R's in turn, and prints the ratio of their medians. */
export async function times({ word, withR, folder }: TimesOptions): Promise<void> {
  const r = withR && hasR();
  console.log(
    `Node ${process.version}, ${cpus()[0]?.model.trim() ?? 'unknown processor'}${r ? '' : '; no R'}`,
  );
  for (const one of withWord(word)) {
    const data = one.data(one.rows);
    let check = Number.NaN;
    const bench = new Bench({ time: 2000, iterations: 5, warmupTime: 500, warmupIterations: 2 });
    bench.add(one.name, () => {
      check = one.ours(data);
    });
    const [task] = await bench.run();
    const { result } = task!;
    if (!('latency' in result)) throw new Error(`${one.name}: the fit failed`, { cause: result });
    const seconds = result.latency.p50 / 1000;
    console.log(line(one, seconds, check, r ? timeR(one, data, folder) : null));
  }
}

function line(one: BenchCase, seconds: number, check: number, r: RTimes | null): string {
  const { name, rows, target, tolerance = 1e-4 } = one;
  const start = `${name}, ${rows.toLocaleString('en')} rows: ${seconds.toPrecision(3)} s`;
  if ('seconds' in target)
    return `${start}, to be within ${target.seconds} s: ${verdict(seconds <= target.seconds)}`;
  if (r === null) return start;
  if (!(Math.abs(check - r.check) <= tolerance)) {
    throw new Error(`${name}: ours has ${check}, R has ${r.check}`);
  }
  const ratio = r.seconds / seconds;
  return (
    `${start}, R ${r.seconds.toPrecision(3)} s (${r.versions}), ${ratio.toPrecision(3)} times faster, ` +
    `to be ${target.ratio}: ${verdict(ratio >= target.ratio)}`
  );
}

const verdict = (met: boolean): string => (met ? 'met' : 'MISSED');

/** Peak memory of a process that makes the data and fits them once, in MB. */
export function peak(word: string, rows: number): number {
  const [one] = withWord(word);
  one!.ours(one!.data(rows));
  return process.resourceUsage().maxRSS / 1024;
}

/** Some cases at n, 2 n and 4 n rows, each in a process of its own. */
export function memory(program: string): void {
  for (const { name, memoryRows: rows } of CASES) {
    if (rows === undefined) continue;
    const peaks = [1, 2, 4].map((times) => {
      const args = [program, '--case', name, '--peak', String(rows * times)];
      return Number(spawnSync(process.execPath, args, { encoding: 'utf8' }).stdout);
    });
    const perRow = (from: number, to: number) =>
      ((1024 * 1024 * (peaks[to]! - peaks[from]!)) / (rows * 2 ** from)).toFixed(0);
    const shown = peaks.map((mb) => mb.toFixed(0)).join(', ');
    console.log(
      `${name}: peak ${shown} MB at ${rows.toLocaleString('en')} rows, twice and four times as many; ` +
        `${perRow(0, 1)} and ${perRow(1, 2)} bytes for each row more`,
    );
  }
}
