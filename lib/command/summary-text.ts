import type { Analysis } from '../analyse.ts';
import type { FreshVersusStored } from '../analysis/fresh-versus-stored.ts';
import { daysWithRange } from '../words/durations.ts';
import { reasonSentence } from '../words/english.ts';
import { counted, counts, difference, rate, rateWithRange, wholeNumber } from '../words/numbers.ts';
import { mixGives, mixLabel, mixRisks, namedOf, planAnswer, planNotes } from '../words/plan.ts';
import { storageLabel } from '../words/storage.ts';
import { type VialStanding, vialsThat } from '../words/told/vials.ts';

type Row = readonly [name: string, said: string];

const VERDICTS: readonly (readonly [VialStanding, string])[] = [
  ['keep', 'keep'],
  ['use-first', 'use first'],
  ['test-first', 'test first'],
  ['discard', 'discard'],
  ['empty', 'empty'],
];

function block(title: string, rows: readonly Row[]): string {
  if (rows.length === 0) return '';
  const width = Math.max(...rows.map(([name]) => name.length)) + 2;
  return `\n${title}\n${rows.map(([name, said]) => `  ${name.padEnd(width)}${said}\n`).join('')}`;
}

function rowsLine({ read, used, leftOut, byReason }: Analysis['rows']): string {
  const head = `${counted(read, 'row')} read, ${wholeNumber(used)} used, ${wholeNumber(leftOut)} left out\n`;
  const reasons = byReason.map(({ reason, rows }) => `  ${wholeNumber(rows)}: ${reasonSentence(reason)}\n`);
  return head + reasons.join('');
}

function fruitSet({ overall, byStorage }: Analysis['raw']): Row[] {
  const methods = byStorage.map((method): Row => [storageLabel(method.storage), rateWithRange(method)]);
  return [['all flowers', rateWithRange(overall)], ...methods];
}

function compared(entry: FreshVersusStored): Row {
  const { storage, adjusted } = entry;
  const said =
    adjusted.estimate === null ? reasonSentence(adjusted.because ?? 'not-settled') : difference(adjusted);
  return [storageLabel(storage), said];
}

function halfAges({ halfAge }: Analysis): Row[] {
  return halfAge.map((entry) => [
    storageLabel(entry.storage),
    entry.estimate === null ? reasonSentence(entry.because ?? 'not-settled') : daysWithRange(entry),
  ]);
}

function vialRows({ vials }: Analysis): Row[] {
  return VERDICTS.flatMap(([standing, words]) =>
    vialsThat(standing, vials).map((vial): Row => {
      const record = vial.flowers === 0 ? 'not used yet' : `so far ${counts(vial.fruits, vial.flowers)}`;
      const expected = standing === 'empty' ? '' : `; expected ${rate(vial)}`;
      return [vial.vial, `${words.padEnd(12)}${vial.pollenParent}, ${record}${expected}`];
    }),
  );
}

function planRows(analysis: Analysis): Row[] {
  const { plan } = analysis;
  if (plan === null) return [];
  const notes = planNotes(plan).map((said): Row => ['', said]);
  const [first, ...others] = namedOf(plan);
  if (first === undefined) return [['', planAnswer(analysis)], ...notes];
  const mixes = [first, ...others].map((mix): Row => {
    const label = others.length === 0 ? 'best' : mixLabel(mix.name);
    return [label, `${mixGives(mix)}; ${mixRisks(mix)}`];
  });
  return [...mixes, ...notes];
}

/** The answers of an analysis in a screenful: counts first, then what the models say. */
export function summaryText(analysis: Analysis): string {
  const { level, useOn } = analysis.provenance.options;
  return [
    rowsLine(analysis.rows),
    block('Fruit set', fruitSet(analysis.raw)),
    block('Like for like, in the same pairs: against fresh pollen', analysis.freshVersusStored.map(compared)),
    block('Days until fruit set is half of what it is at age 0', halfAges(analysis)),
    block(`Vials, for use on ${useOn}`, vialRows(analysis)),
    block('Next season’s flowers', planRows(analysis)),
    `\nRanges are at the level ${level}. --json prints every number; report writes them as a page.\n`,
  ].join('');
}
