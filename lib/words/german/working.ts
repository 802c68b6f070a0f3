/** Worte über den Rechenweg: Streuungen, Ziehungen, Optionen. */

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

export const AGE_COLUMNS = ['Pollen', 'Alter', 'Rate und Spanne'] as const;

export function ageRows(
  byAge: readonly AgeBand[],
  storages: readonly string[],
): readonly (readonly string[])[] {
  return byAge
    .filter(({ storage }) => storages.includes(storage))
    .map((band) => [storageLabel(band.storage), ageBandLabel(band), rateWithRange(band)]);
}

const EFFECTS: ReadonlyMap<string, string> = new Map([
  ['seedParent', 'Mutterpflanzen'],
  ['pollenParent', 'Pollenspender'],
  ['pair', 'Paare, über ihre Eltern hinaus'],
  ['vial', 'Röhrchen'],
  ['morning', 'Morgen'],
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
  const worth = Math.min(draws, effectiveDraws);
  return `Gerechnet ist mit ${wholeNumber(draws)} Ziehungen, so viel wert wie ${wholeNumber(worth)} unabhängige.`;
}

export const OPTION_COLUMNS = ['Option', 'Wert'] as const;

function readingRows({ samePlants, dateOrder, dateSystem, map, same, storage }: OptionsUsed): string[][] {
  return [
    ...(samePlants ? [['same-plants', 'ja']] : []),
    ...(dateOrder === null ? [] : [['date-order', dateOrder]]),
    ...(dateSystem === null ? [] : [['date-system', String(dateSystem)]]),
    ...map.map(({ header, column }) => ['map', `${header}=${column}`]),
    ...same.map((names) => ['same', names.join('=')]),
    ...storage.map(({ word, method }) => ['storage', `${word}=${method}`]),
  ];
}

export function optionRows(options: OptionsUsed): readonly (readonly string[])[] {
  const { level, endpoint, asOf, useOn, ageScale, worth, must, atMost } = options;
  return [
    ['level', percent(level)],
    [
      'endpoint',
      endpoint === 'initial' ? 'initial: Fruchtansatz bei der Kontrolle' : 'final: geerntete Früchte',
    ],
    ['as-of', asOf ?? 'keiner'],
    ['use-on', useOn ?? 'keiner'],
    ['age-scale', ageScale ?? 'beide, gemittelt'],
    ['worth', worth === null ? 'keiner' : `${inTen(worth)} (${decimal(worth, 3)})`],
    ...must.map((wanted) => ['must', `${pairName(wanted)}: ${flowersIn(wanted.flowers)}`]),
    ...atMost.map(({ seedParent, pollenParent, flowers }) => [
      'at-most',
      `${seedParent === undefined ? pollenParent : pairName({ seedParent, pollenParent })}: ${flowersIn(flowers)}`,
    ]),
    ...readingRows(options),
  ];
}
