/** The table of priors in French. */
import type { PriorRecord } from '../../analysis/grower-model.ts';
import { decimal } from './numbers.ts';
import { pollenOf } from './storage.ts';

const KINDS: Readonly<Record<PriorRecord['distribution'], string>> = {
  normal: 'normale',
  'half-normal': 'demi-normale',
  'normal below 0': 'normale, sous 0',
  'logit-normal': 'logit-normale',
};

const BETWEEN: ReadonlyMap<string, string> = new Map([
  ['seedParent', 'mères'],
  ['pollenParent', 'pères'],
  ['pair', 'couples'],
  ['vial', 'tubes'],
  ['morning', 'matins'],
  ['season', 'saisons'],
  ['grower', 'cultivateurs'],
]);

const ABOUT: Readonly<Record<PriorRecord['about'], (of: string, days: number) => string>> = {
  fresh: () => 'pollen frais, couple moyen',
  storage: (of) => `${pollenOf(of)} à l’âge 0, face au frais`,
  age: (of, days) => `${pollenOf(of)}, après ${days} jours`,
  share: (of) => `${pollenOf(of)} : part du couple`,
  'mean-age': (of) => `${pollenOf(of)} : âge moyen dans le couple`,
  sd: (of) => `écart type entre ${BETWEEN.get(of) ?? of}`,
  incompatible: () => 'part des couples incompatibles',
};

export function priorRows(priors: readonly PriorRecord[]): readonly (readonly string[])[] {
  return priors.map(({ about, of, atDays, distribution, centre, spread }) => [
    ABOUT[about](of ?? '', atDays ?? 0),
    KINDS[distribution],
    decimal(centre, 1),
    decimal(spread, 1),
  ]);
}
