/** The season review's words about its own working: spreads between plants, draws, options. */

import type { OptionsUsed } from '../analyse.ts';
import type { GrowerModelRecord } from '../analysis/grower-model.ts';
import type { ParentsModel } from '../analysis/models.ts';
import type { AgeBand } from '../analysis/raw.ts';
import { pairName } from './choice-figures.ts';
import { reasonSentence } from './english.ts';
import { counted, decimal, inTen, percent, rateWithRange, wholeNumber } from './numbers.ts';
import { ageBandLabel } from './rate-figures.ts';
import { storageLabel } from './storage.ts';

/** Headings of the table of ages. */
export const AGE_COLUMNS = ['pollen', 'age', 'rate and range'] as const;

/**
 * Rows of the table of ages of some stored methods, as counted.
 *
 * @example ageRows(analysis.raw.byAge, ['room']) // [['room temperature', '3 to 7 days', '0 of 6; could still be as high as 4 in 10']]
 */
export function ageRows(
  byAge: readonly AgeBand[],
  storages: readonly string[],
): readonly (readonly string[])[] {
  return byAge
    .filter(({ storage }) => storages.includes(storage))
    .map((band) => [storageLabel(band.storage), ageBandLabel(band), rateWithRange(band)]);
}

const EFFECTS: ReadonlyMap<string, string> = new Map([
  ['seedParent', 'seed parents'],
  ['pollenParent', 'pollen parents'],
  ['pair', 'pairs, beyond their parents'],
  ['vial', 'vials'],
  ['morning', 'mornings'],
]);

/**
 * Rows of the table of spreads: a standard deviation on the logit scale for each random effect.
 *
 * @example spreadRows({ variances: { seedParent: 0.36, pair: 0.04 } }) // [['seed parents', '0.60'], ['pairs, beyond their parents', '0.20']]
 */
export function spreadRows({ variances }: Pick<ParentsModel, 'variances'>): readonly (readonly string[])[] {
  return Object.entries(variances).map(([effect, variance]) => [
    EFFECTS.get(effect) ?? effect,
    decimal(Math.sqrt(variance), 2),
  ]);
}

/**
 * How many draws the answers rest on, or why there are none: "Worked out with 1000 draws, worth 840 independent ones."
 *
 * @example drawsSaid({ draws: 1000, effectiveDraws: 840, settled: true }) // 'It was worked out with 1000 draws, worth 840 independent ones.'
 */
export function drawsSaid(
  grower: Pick<GrowerModelRecord, 'draws' | 'effectiveDraws' | 'settled' | 'because'>,
): string {
  const { draws, effectiveDraws, settled, because } = grower;
  if (!settled) return reasonSentence(because ?? 'model-not-settled');
  // Resampled draws cannot be worth more than their number, though the proposals behind them were.
  const worth = Math.min(draws, effectiveDraws);
  return `It was worked out with ${wholeNumber(draws)} draws, worth ${wholeNumber(worth)} independent ones.`;
}

/** Headings of the table of options. */
export const OPTION_COLUMNS = ['option', 'value'] as const;

/** What was said about reading the files, where anything was. */
function readingRows({ samePlants, dateOrder, dateSystem, map, same, storage }: OptionsUsed): string[][] {
  return [
    ...(samePlants ? [['same-plants', 'yes']] : []),
    ...(dateOrder === null ? [] : [['date-order', dateOrder]]),
    ...(dateSystem === null ? [] : [['date-system', String(dateSystem)]]),
    ...map.map(({ header, column }) => ['map', `${header}=${column}`]),
    ...same.map((names) => ['same', names.join('=')]),
    ...storage.map(({ word, method }) => ['storage', `${word}=${method}`]),
  ];
}

/**
 * Rows of the table of options, by the names that the command gives them.
 *
 * @example
 * const options = { level: 0.95, endpoint: 'initial', asOf: null, useOn: '2026-06-01', ageScale: null, worth: null };
 * const unsaid = { must: [], atMost: [], samePlants: false, dateOrder: null, dateSystem: null, map: [], same: [], storage: [] };
 * optionRows({ ...options, ...unsaid })[0]; // ['level', '95%']
 */
export function optionRows(options: OptionsUsed): readonly (readonly string[])[] {
  const { level, endpoint, asOf, useOn, ageScale, worth, must, atMost } = options;
  return [
    ['level', percent(level)],
    ['endpoint', endpoint === 'initial' ? 'initial: fruit set at the check' : 'final: fruits harvested'],
    ['as-of', asOf ?? 'none'],
    ['use-on', useOn ?? 'none'],
    ['age-scale', ageScale ?? 'both, averaged'],
    ['worth', worth === null ? 'none' : `${inTen(worth)} (${decimal(worth, 3)})`],
    ...must.map((wanted) => ['must', `${pairName(wanted)}: ${counted(wanted.flowers, 'flower')}`]),
    ...atMost.map(({ seedParent, pollenParent, flowers }) => [
      'at-most',
      `${seedParent === undefined ? pollenParent : pairName({ seedParent, pollenParent })}: ${counted(flowers, 'flower')}`,
    ]),
    ...readingRows(options),
  ];
}
