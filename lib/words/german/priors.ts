/** Die Tabelle der Vorannahmen: wofür, welcher Art, wo ihre Mitte liegt und wie weit sie sind. */
import type { PriorRecord } from '../../analysis/grower-model.ts';
import { decimal } from './numbers.ts';
import { pollenOf } from './storage.ts';

const KINDS: Readonly<Record<PriorRecord['distribution'], string>> = {
  normal: 'normal',
  'half-normal': 'halbnormal',
  'normal below 0': 'normal, unter 0',
  'logit-normal': 'logit-normal',
};

const BETWEEN: ReadonlyMap<string, string> = new Map([
  ['seedParent', 'Mutterpflanzen'],
  ['pollenParent', 'Pollenspendern'],
  ['pair', 'Paaren'],
  ['vial', 'Röhrchen'],
  ['morning', 'Morgen'],
  ['season', 'Saisons'],
  ['grower', 'Züchtern'],
]);

const ABOUT: Readonly<Record<PriorRecord['about'], (of: string, days: number) => string>> = {
  fresh: () => 'frischer Pollen, durchschnittliches Paar',
  storage: (of) => `${pollenOf(of)} im Alter 0, gegen frischen`,
  age: (of, days) => `${pollenOf(of)}, nach ${days} Tagen`,
  share: (of) => `${pollenOf(of)}: Anteil des Paars`,
  'mean-age': (of) => `${pollenOf(of)}: mittleres Alter im Paar`,
  sd: (of) => `Standardabweichung zwischen ${BETWEEN.get(of) ?? of}`,
  incompatible: () => 'Anteil unverträglicher Paare',
};

export function priorRows(priors: readonly PriorRecord[]): readonly (readonly string[])[] {
  return priors.map(({ about, of, atDays, distribution, centre, spread }) => [
    ABOUT[about](of ?? '', atDays ?? 0),
    KINDS[distribution],
    decimal(centre, 1),
    decimal(spread, 1),
  ]);
}
