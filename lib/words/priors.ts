/** The table of priors: what each is about, its kind, where it stands and how wide it is. */
import type { PriorRecord } from '../analysis/grower-model.ts';
import { decimal } from './numbers.ts';
import { pollenOf } from './storage.ts';

const KINDS: Readonly<Record<PriorRecord['distribution'], string>> = {
  normal: 'normal',
  'half-normal': 'half-normal',
  'normal below 0': 'normal, below 0',
  'logit-normal': 'logit-normal',
};

const BETWEEN: ReadonlyMap<string, string> = new Map([
  ['seedParent', 'seed parents'],
  ['pollenParent', 'pollen parents'],
  ['pair', 'pairs'],
  ['vial', 'vials'],
  ['morning', 'mornings'],
  ['season', 'seasons'],
  ['grower', 'growers'],
]);

const ABOUT: Readonly<Record<PriorRecord['about'], (of: string, days: number) => string>> = {
  fresh: () => 'fresh pollen, average pair',
  storage: (of) => `${pollenOf(of)} at age 0, against fresh`,
  age: (of, days) => `${pollenOf(of)}, after ${days} days`,
  share: (of) => `${pollenOf(of)}: the pair’s share`,
  'mean-age': (of) => `${pollenOf(of)}: the pair’s mean age`,
  sd: (of) => `standard deviation between ${BETWEEN.get(of) ?? of}`,
  incompatible: () => 'share of incompatible pairs',
};

/**
 * Rows of the table of priors: what for, kind, centre and spread.
 *
 * @example
 * const prior = { about: 'sd', of: 'vial', atDays: null, distribution: 'half-normal', centre: 0, spread: 0.5 };
 * priorRows([prior]); // [['standard deviation between vials', 'half-normal', '0.0', '0.5']]
 */
export function priorRows(priors: readonly PriorRecord[]): readonly (readonly string[])[] {
  return priors.map(({ about, of, atDays, distribution, centre, spread }) => [
    ABOUT[about](of ?? '', atDays ?? 0),
    KINDS[distribution],
    decimal(centre, 1),
    decimal(spread, 1),
  ]);
}
