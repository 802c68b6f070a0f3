/** Is a file of a million flowers read in at most one and a half times what csv-parse alone takes to split it? */

import { createHash } from 'node:crypto';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { parse } from 'csv-parse/sync';
import { randomStream } from '../../lib/numerics/random.ts';
import { addDays } from '../../lib/season/dates.ts';
import { readSeason } from '../../lib/season/read-season.ts';

const HEADER =
  'cross_id,pollination_date,seed_parent,pollen_parent,storage,pollen_collected,outcome,seeds,note';
const TARGET = 1.5;
const TURNS = 5;

/** A crosses file of so many rows: forty plants, half of the pollen frozen, ten seasons. */
export function crossesFile(rows: number): Uint8Array {
  const random = randomStream(1);
  const below = (n: number): number => Math.floor(random.uniform() * n);
  const lines = [HEADER];
  for (let i = 0; i < rows; i++) {
    const day = addDays(`${2015 + below(10)}-05-01`, below(90));
    const [mother, father] = [below(40), below(39)];
    const pollen = below(2) ? 'fresh,' : `frozen,${addDays(day, -1 - below(300))}`;
    const outcome = below(5) < 2 ? 'fruit,120' : 'none,';
    const parents = `Plant ${mother},Plant ${father < mother ? father : father + 1}`;
    lines.push(`T${i},${day},${parents},${pollen},${outcome},${below(20) ? '' : 'windy'}`);
  }
  return new TextEncoder().encode(`${lines.join('\n')}\n`);
}

/** Takes away what the other side left, which the next one would pay for. */
function cleanHeap(): void {
  setFlagsFromString('--expose-gc');
  (runInNewContext('gc') as () => void)();
}

/** Seconds of processor time, all threads together: the wall clock counts what else the machine does. */
function seconds(run: () => void): number {
  cleanHeap();
  const before = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

const median = (numbers: readonly number[]): number =>
  [...numbers].sort((a, b) => a - b)[numbers.length >> 1]!;

/** Times both in turn, and prints the ratio of their medians. */
export function importTimes(rows = 1_000_000): void {
  const bytes = crossesFile(rows);
  const [ours, theirs]: [number[], number[]] = [[], []];
  for (let turn = 0; turn < TURNS; turn++) {
    theirs.push(seconds(() => void parse(bytes, { bom: true })));
    ours.push(
      seconds(() => {
        // As the command does it.
        const sha256 = createHash('sha256').update(bytes).digest('hex');
        const [file] = readSeason([{ name: 'crosses.csv', bytes, sha256 }]).files;
        if (file!.rows !== rows || file!.problems.some(({ severity }) => severity === 'error'))
          throw new Error('the file was not read as it was written');
      }),
    );
  }
  const ratio = median(ours) / median(theirs);
  console.log(
    `reading ${rows.toLocaleString('en')} flowers: ${median(ours).toPrecision(3)} s, csv-parse alone ` +
      `${median(theirs).toPrecision(3)} s of processor time, ratio ${ratio.toPrecision(3)}, ` +
      `to be at most ${TARGET}: ${ratio <= TARGET ? 'met' : 'MISSED'}; peak ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB`,
  );
}
