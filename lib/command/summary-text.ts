import type { Analysis } from '../analyse.ts';
import type { FreshVersusStored } from '../analysis/fresh-versus-stored.ts';
import * as english from '../words/index.ts';
import type { Words } from '../words/languages.ts';
import { type VialStanding, vialsThat } from '../words/told/vials.ts';

type Row = readonly [name: string, said: string];

const VERDICTS: readonly VialStanding[] = ['keep', 'use-first', 'test-first', 'discard', 'empty'];

/** A column of texts, each as wide as the widest and two signs more. */
const widthOf = (texts: readonly string[]): number => Math.max(...texts.map((text) => text.length)) + 2;

function block(title: string, rows: readonly Row[]): string {
  if (rows.length === 0) return '';
  const width = widthOf(rows.map(([name]) => name));
  return `\n${title}\n${rows.map(([name, said]) => `  ${name.padEnd(width)}${said}\n`).join('')}`;
}

function rowsLine(all: Analysis['rows'], words: Words): string {
  const { headed, reasonSentence, summaryWords, wholeNumber } = words;
  const reasons = all.byReason.map(
    ({ reason, rows }) => `  ${headed(wholeNumber(rows), reasonSentence(reason))}\n`,
  );
  return `${summaryWords.rows(all)}\n${reasons.join('')}`;
}

function fruitSet({ overall, byStorage }: Analysis['raw'], words: Words): Row[] {
  const { rateWithRange, storageLabel, summaryWords } = words;
  const methods = byStorage.map((method): Row => [storageLabel(method.storage), rateWithRange(method)]);
  return [[summaryWords.allFlowers, rateWithRange(overall)], ...methods];
}

function compared(entry: FreshVersusStored, words: Words): Row {
  const { difference, pairsCompared, reasonSentence, storageLabel } = words;
  const { storage, adjusted } = entry;
  const said =
    adjusted.estimate === null
      ? reasonSentence(adjusted.because ?? 'not-settled')
      : `${difference(adjusted)}; ${pairsCompared(entry)}`;
  return [storageLabel(storage), said];
}

function halfAges({ halfAge }: Analysis, words: Words): Row[] {
  const { daysWithRange, reasonSentence, storageLabel } = words;
  return halfAge.map((entry) => [
    storageLabel(entry.storage),
    entry.estimate === null ? reasonSentence(entry.because ?? 'not-settled') : daysWithRange(entry),
  ]);
}

function vialRows({ vials }: Analysis, { rate, summaryWords, VERDICT_LABELS }: Words): Row[] {
  const width = widthOf(VERDICTS.map((standing) => VERDICT_LABELS[standing]));
  return VERDICTS.flatMap((standing) =>
    vialsThat(standing, vials).map((vial): Row => {
      const said = summaryWords.vial(vial, standing === 'empty' ? null : rate(vial));
      return [vial.vial, VERDICT_LABELS[standing].padEnd(width) + said];
    }),
  );
}

function planRows(analysis: Analysis, words: Words): Row[] {
  const { mixGives, mixLabel, mixRisks, namedOf, planAnswer, planNotes, summaryWords: said } = words;
  const { plan } = analysis;
  if (plan === null) return [];
  const notes = planNotes(plan).map((note): Row => ['', note]);
  const [first, ...others] = namedOf(plan);
  if (first === undefined) return [['', planAnswer(analysis)], ...notes];
  const mixes = [first, ...others].map((mix): Row => {
    const label = others.length === 0 ? said.best : mixLabel(mix.name);
    return [label, said.mix(mixGives(mix), mixRisks(mix))];
  });
  return [...mixes, ...notes];
}

/** The answers of an analysis in a screenful: counts first, then what the models say. */
export function summaryText(analysis: Analysis, words: Words = english): string {
  const { level, useOn } = analysis.provenance.options;
  const { summaryWords: said } = words;
  const stored = analysis.freshVersusStored.map((entry) => compared(entry, words));
  return [
    rowsLine(analysis.rows, words),
    block(said.fruitSet, fruitSet(analysis.raw, words)),
    block(said.compared, stored),
    block(said.halfAges, halfAges(analysis, words)),
    block(said.vials(useOn ?? ''), vialRows(analysis, words)),
    block(said.plan, planRows(analysis, words)),
    `\n${said.closing(level)}\n`,
  ].join('');
}
