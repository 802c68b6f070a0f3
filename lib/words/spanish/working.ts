/** The season review's words about its own working: spreads between plants, draws, options. */

import type { OptionsUsed } from '../../analyse.ts';
import type { GrowerModelRecord } from '../../analysis/grower-model.ts';
import type { ParentsModel } from '../../analysis/models.ts';
import type { AgeBand } from '../../analysis/raw.ts';
import { pairName } from './choice-figures.ts';
import { flowersIn } from './nouns.ts';
import { decimal, inTen, percent, rateWithRange, wholeNumber } from './numbers.ts';
import { ageBandLabel } from './rate-figures.ts';
import { reasonSentence } from './reasons.ts';
import { storageLabel } from './storage.ts';

export const AGE_COLUMNS = ['polen', 'edad', 'frecuencia y margen'] as const;

export function ageRows(
  byAge: readonly AgeBand[],
  storages: readonly string[],
): readonly (readonly string[])[] {
  return byAge
    .filter(({ storage }) => storages.includes(storage))
    .map((band) => [storageLabel(band.storage), ageBandLabel(band), rateWithRange(band)]);
}

const EFFECTS: ReadonlyMap<string, string> = new Map([
  ['seedParent', 'plantas madre'],
  ['pollenParent', 'padres'],
  ['pair', 'parejas, más allá de sus padres'],
  ['vial', 'viales'],
  ['morning', 'mañanas'],
]);

export function spreadRows({ variances }: Pick<ParentsModel, 'variances'>): readonly (readonly string[])[] {
  return Object.entries(variances).map(([effect, variance]) => [
    EFFECTS.get(effect) ?? effect,
    decimal(Math.sqrt(variance), 2),
  ]);
}

export function drawsSaid(
  grower: Pick<GrowerModelRecord, 'draws' | 'effectiveDraws' | 'settled' | 'because'>,
): string {
  const { draws, effectiveDraws, settled, because } = grower;
  if (!settled) return reasonSentence(because ?? 'model-not-settled');
  // Resampled draws cannot be worth more than their number, though the proposals behind them were.
  const worth = Math.min(draws, effectiveDraws);
  return `Se calculó con ${wholeNumber(draws)} muestras, que valen por ${wholeNumber(worth)} independientes.`;
}

export const OPTION_COLUMNS = ['opción', 'valor'] as const;

/** What was said about reading the files, where anything was. */
function readingRows({ samePlants, dateOrder, dateSystem, map, same, storage }: OptionsUsed): string[][] {
  return [
    ...(samePlants ? [['same-plants', 'sí']] : []),
    ...(dateOrder === null ? [] : [['date-order', dateOrder]]),
    ...(dateSystem === null ? [] : [['date-system', String(dateSystem)]]),
    ...map.map(({ header, column }) => ['map', `${header}=${column}`]),
    ...same.map((names) => ['same', names.join('=')]),
    ...storage.map(({ word, method }) => ['storage', `${word}=${method}`]),
  ];
}

/** Rows of the table of options, by the names that the command gives them. */
export function optionRows(options: OptionsUsed): readonly (readonly string[])[] {
  const { level, endpoint, asOf, useOn, ageScale, worth, must, atMost } = options;
  return [
    ['level', percent(level)],
    ['endpoint', endpoint === 'initial' ? 'initial: cuajado en la revisión' : 'final: frutos cosechados'],
    ['as-of', asOf ?? 'ninguno'],
    ['use-on', useOn ?? 'ninguno'],
    ['age-scale', ageScale ?? 'ambas, promediadas'],
    ['worth', worth === null ? 'ninguno' : `${inTen(worth)} (${decimal(worth, 3)})`],
    ...must.map((wanted) => ['must', `${pairName(wanted)}: ${flowersIn(wanted.flowers)}`]),
    ...atMost.map(({ seedParent, pollenParent, flowers }) => [
      'at-most',
      `${seedParent === undefined ? pollenParent : pairName({ seedParent, pollenParent })}: ${flowersIn(flowers)}`,
    ]),
    ...readingRows(options),
  ];
}
