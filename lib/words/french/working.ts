/** The working of the analysis in words: tables of ages, spreads, draws, options. */
import type { OptionsUsed } from '../../analyse.ts';
import type { GrowerModelRecord } from '../../analysis/grower-model.ts';
import type { ParentsModel } from '../../analysis/models.ts';
import type { AgeBand } from '../../analysis/raw.ts';
import { pairName } from './choice-figures.ts';
import { counted, decimal, inTen, percent, rateWithRange, wholeNumber } from './numbers.ts';
import { ageBandLabel } from './rate-figures.ts';
import { reasonSentence } from './reasons.ts';
import { storageLabel } from './storage.ts';

export const AGE_COLUMNS = ['pollen', 'âge', 'taux et fourchette'] as const;

/** Rates by band of age, for some methods. */
export function ageRows(
  byAge: readonly AgeBand[],
  storages: readonly string[],
): readonly (readonly string[])[] {
  return byAge
    .filter(({ storage }) => storages.includes(storage))
    .map((band) => [storageLabel(band.storage), ageBandLabel(band), rateWithRange(band)]);
}

const EFFECTS: ReadonlyMap<string, string> = new Map([
  ['seedParent', 'mères'],
  ['pollenParent', 'pères'],
  ['pair', 'couples, au-delà de leurs parents'],
  ['vial', 'tubes'],
  ['morning', 'matins'],
]);

/** Standard deviations of the crossed effects. */
export function spreadRows({ variances }: Pick<ParentsModel, 'variances'>): readonly (readonly string[])[] {
  return Object.entries(variances).map(([effect, variance]) => [
    EFFECTS.get(effect) ?? effect,
    decimal(Math.sqrt(variance), 2),
  ]);
}

/** How many draws, and what they are worth. */
export function drawsSaid(
  grower: Pick<GrowerModelRecord, 'draws' | 'effectiveDraws' | 'settled' | 'because'>,
): string {
  const { draws, effectiveDraws, settled, because } = grower;
  if (!settled) return reasonSentence(because ?? 'model-not-settled');
  // Resampled draws cannot be worth more than their number, though the proposals behind them were.
  const worth = Math.min(draws, effectiveDraws);
  return `Calculé avec ${wholeNumber(draws)} tirages, qui en valent ${wholeNumber(worth)} indépendants.`;
}

export const OPTION_COLUMNS = ['option', 'valeur'] as const;

function readingRows({ samePlants, dateOrder, dateSystem, map, same, storage }: OptionsUsed): string[][] {
  return [
    ...(samePlants ? [['same-plants', 'oui']] : []),
    ...(dateOrder === null ? [] : [['date-order', dateOrder]]),
    ...(dateSystem === null ? [] : [['date-system', String(dateSystem)]]),
    ...map.map(({ header, column }) => ['map', `${header}=${column}`]),
    ...same.map((names) => ['same', names.join('=')]),
    ...storage.map(({ word, method }) => ['storage', `${word}=${method}`]),
  ];
}

/** Options as they were used; names stay as they are typed. */
export function optionRows(options: OptionsUsed): readonly (readonly string[])[] {
  const { level, endpoint, asOf, useOn, ageScale, worth, must, atMost } = options;
  return [
    ['level', percent(level)],
    ['endpoint', endpoint === 'initial' ? 'initial : nouaison au contrôle' : 'final : fruits récoltés'],
    ['as-of', asOf ?? 'aucun'],
    ['use-on', useOn ?? 'aucun'],
    ['age-scale', ageScale ?? 'les deux, en moyenne'],
    ['worth', worth === null ? 'aucun' : `${inTen(worth)} (${decimal(worth, 3)})`],
    ...must.map((wanted) => ['must', `${pairName(wanted)} : ${counted(wanted.flowers, 'fleur')}`]),
    ...atMost.map(({ seedParent, pollenParent, flowers }) => [
      'at-most',
      `${seedParent === undefined ? pollenParent : pairName({ seedParent, pollenParent })} : ${counted(flowers, 'fleur')}`,
    ]),
    ...readingRows(options),
  ];
}
