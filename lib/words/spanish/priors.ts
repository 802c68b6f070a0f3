/** The table of priors in Spanish. */
import type { PriorRecord } from '../../analysis/grower-model.ts';
import { decimal } from './numbers.ts';
import { pollenOf } from './storage.ts';

const KINDS: Readonly<Record<PriorRecord['distribution'], string>> = {
  normal: 'normal',
  'half-normal': 'seminormal',
  'normal below 0': 'normal, menor que 0',
  'logit-normal': 'logit-normal',
};

const BETWEEN: ReadonlyMap<string, string> = new Map([
  ['seedParent', 'plantas madre'],
  ['pollenParent', 'padres'],
  ['pair', 'parejas'],
  ['vial', 'viales'],
  ['morning', 'mañanas'],
  ['season', 'temporadas'],
  ['grower', 'cultivadores'],
]);

const ABOUT: Readonly<Record<PriorRecord['about'], (of: string, days: number) => string>> = {
  fresh: () => 'polen fresco, pareja media',
  storage: (of) => `${pollenOf(of)} a la edad 0, frente al fresco`,
  age: (of, days) => `${pollenOf(of)}, tras ${days} días`,
  share: (of) => `${pollenOf(of)}: parte de la pareja`,
  'mean-age': (of) => `${pollenOf(of)}: edad media en la pareja`,
  sd: (of) => `desviación típica entre ${BETWEEN.get(of) ?? of}`,
  incompatible: () => 'parte de parejas incompatibles',
};

export function priorRows(priors: readonly PriorRecord[]): readonly (readonly string[])[] {
  return priors.map(({ about, of, atDays, distribution, centre, spread }) => [
    ABOUT[about](of ?? '', atDays ?? 0),
    KINDS[distribution],
    decimal(centre, 1),
    decimal(spread, 1),
  ]);
}
