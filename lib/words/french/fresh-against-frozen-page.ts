/** What the page of fresh against stored pollen says. */
import type { Estimate } from '../../proportions/interval.ts';
import { CANNOT_TELL, capitalised, counted, countedOf, decimal, wholeNumber } from './numbers.ts';
import { pollenOf, storageLabel } from './storage.ts';

type Share = readonly [some: number, all: number];

const KINDS = {
  hard: ['difficile', 'difficiles'],
  easy: ['facile', 'faciles'],
  never: ['jamais avec du pollen frais', 'jamais avec du pollen frais'],
} as const;

export const freshAgainstFrozenPage = {
  work: (method: string, ofStored: Share, ofFresh: Share): string => {
    if (ofFresh[1] === 0)
      return 'Aucun couple n’a eu du pollen frais : aucun ne peut être dit difficile ou facile.';
    const start = 'Parmi les couples qui ont eu du pollen frais :';
    const fresh = `${countedOf(...ofFresh, 'fleur')} avec du pollen frais`;
    if (ofStored[1] === 0)
      return `${start} ${fresh} étaient sur des couples difficiles ; aucun n’a eu aussi du ${pollenOf(method)}.`;
    return `${start} ${countedOf(...ofStored, 'fleur')} avec du ${pollenOf(method)} étaient sur des couples difficiles, et ${fresh}.`;
  },
  workCaption: 'Fleurs par sorte de couple et de pollen',
  workColumns: (method: string) => ['Couples', 'Pollen frais', capitalised(pollenOf(method))],
  kindOfPair: (kind: 'hard' | 'easy' | 'never', pairs: number): string =>
    `${wholeNumber(pairs)} ${KINDS[kind][pairs < 2 ? 0 : 1]}`,
  same: (method: string, pairs: number, fresh: number, stored: number): string =>
    pairs === 0
      ? `Aucun couple n’a eu à la fois du pollen frais et du ${pollenOf(method)} : rien ne peut être comparé à couples égaux.`
      : `${pairs === 1 ? '1 couple a' : `${wholeNumber(pairs)} couples ont`} eu les deux sortes : le pollen frais a pris plus souvent sur ${wholeNumber(fresh)}, le ` +
        `${pollenOf(method)} sur ${wholeNumber(stored)}, et sur ${wholeNumber(pairs - fresh - stored)} les deux autant.`,
  noPairToDraw: 'Il n’y a pas de couple à dessiner.',
  drawing: 'Un cercle par couple : fruits pour 10 fleurs avec du pollen frais et avec du pollen stocké',
  freshAxis: ['pollen frais :', 'fruits pour 10 fleurs'],
  storedAxis: (method: string) => [`${pollenOf(method)} :`, 'fruits pour 10 fleurs'],
  label: (method: string): string =>
    `Pollen frais et ${pollenOf(method)} sur les couples qui ont eu les deux`,
  finding: (fresh: number, stored: number): string =>
    'Un cercle par couple, plus grand avec plus de fleurs. Sous la ligne tiretée le pollen frais a pris plus souvent ' +
    `(${counted(fresh, 'couple')}), au-dessus le pollen stocké (${wholeNumber(stored)}).`,
  description:
    'Un cercle pour chaque couple qui a eu les deux sortes de pollen, et la ligne où les deux prendraient aussi bien.',
  sameCaption: 'Couples qui ont eu les deux sortes de pollen',
  sameColumns: (method: string) => ['Couple (mère × père)', 'Frais', capitalised(storageLabel(method))],
  specification:
    'Le graphique des couples qui ont eu les deux sortes de pollen, pour des programmes (Vega-Lite)',
  nothingStored: 'Aucun pollen stocké n’a été utilisé : il n’y a rien à comparer.',
  lostDifference: (method: string, lowest: number | null, highest: number | null): string => {
    const inTen = (value: number | null) => (value === null ? 'inconnu' : decimal(10 * value, 1));
    return (
      `Sur toutes les fleurs, l’écart entre pollen frais et ${pollenOf(method)} serait de ${inTen(lowest)} à ${inTen(highest)} fruits ` +
      'pour 10 fleurs, quoi que cachent les étiquettes perdues.'
    );
  },
  none: 'aucune',
  seasonsCaption: 'Fruits sur fleurs, par saison',
  fathersCaption: 'Fruits sur fleurs, par père',
  byColumns: (by: 'season' | 'pollenParent', method: string) => [
    by === 'season' ? 'Saison' : 'Père',
    'Frais',
    capitalised(storageLabel(method)),
  ],
  ratio: ({ estimate, lower, upper }: Estimate): string =>
    estimate === null
      ? CANNOT_TELL
      : `${decimal(estimate, 2)} (peut-être ${lower === null ? 'jusqu’à 0' : decimal(lower, 2)} à ${upper === null ? 'sans fin' : decimal(upper, 2)})`,
  oddsCaption: (method: string): string =>
    `Cote d’un fruit, frais ÷ ${storageLabel(method)}, au sein des couples`,
  oddsColumns: ['Méthode', 'Rapport des cotes'],
  commonOdds: 'Rapport des cotes commun',
  conditionalOdds: 'Rapport des cotes conditionnel',
  noOdds: 'Aucun pollen stocké n’a été utilisé.',
};
