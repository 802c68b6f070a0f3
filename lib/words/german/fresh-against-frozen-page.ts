/** Was die Seite sagt, die frischen gegen gelagerten Pollen Paar für Paar hält. */

import type { Estimate } from '../../proportions/interval.ts';
import { pairsIn } from './nouns.ts';
import { CANNOT_TELL, capitalised, counts, decimal, wholeNumber } from './numbers.ts';
import { pollenOf, storageLabel, withPollen } from './storage.ts';

type Share = readonly [some: number, all: number];

const KINDS = { hard: 'schwierige', easy: 'leichte', never: 'nie mit frischem Pollen' } as const;

export const freshAgainstFrozenPage = {
  work: (method: string, ofStored: Share, ofFresh: Share): string => {
    if (ofFresh[1] === 0)
      return 'Kein Paar hatte frischen Pollen; keines lässt sich schwierig oder leicht nennen.';
    const start = 'Unter den Paaren, die frischen Pollen hatten: auf schwierigen Paaren waren';
    const fresh = `${counts(...ofFresh)} Blüten mit frischem Pollen`;
    if (ofStored[1] === 0) return `${start} ${fresh}; Blüten ${withPollen(method)} hatte keines von ihnen.`;
    return `${start} ${counts(...ofStored)} Blüten ${withPollen(method)} und ${fresh}.`;
  },
  workCaption: 'Blüten nach Art des Paares und des Pollens',
  workColumns: (method: string) => ['Paare', 'Frischer Pollen', capitalised(pollenOf(method))],
  kindOfPair: (kind: 'hard' | 'easy' | 'never', pairs: number): string =>
    `${wholeNumber(pairs)} ${KINDS[kind]}`,
  same: (method: string, pairs: number, fresh: number, stored: number): string =>
    pairs === 0
      ? `Kein Paar hatte sowohl frischen als auch ${pollenOf(method, 'accusative')}; bei gleichen Paaren ist nichts zu vergleichen.`
      : `${pairs === 1 ? '1 Paar hatte' : `${wholeNumber(pairs)} Paare hatten`} beide Arten: auf ${wholeNumber(fresh)} setzte frischer Pollen öfter an, auf ` +
        `${wholeNumber(stored)} ${pollenOf(method)}, und auf ${wholeNumber(pairs - fresh - stored)} beide gleich oft.`,
  noPairToDraw: 'Es ist kein Paar zu zeichnen.',
  drawing: 'Ein Kreis je Paar: Früchte von je 10 Blüten mit frischem Pollen gegen gelagerten Pollen',
  freshAxis: ['frischer Pollen:', 'Früchte von je 10'],
  storedAxis: (method: string) => [`${pollenOf(method)}:`, 'Früchte von je 10'],
  label: (method: string): string =>
    `Frischer gegen ${pollenOf(method, 'accusative')} auf den Paaren mit beiden`,
  finding: (fresh: number, stored: number): string =>
    'Ein Kreis je Paar, größer bei mehr Blüten. Unter der gestrichelten Linie setzte frischer Pollen öfter an ' +
    `(${pairsIn(fresh)}), darüber gelagerter (${wholeNumber(stored)}).`,
  description:
    'Ein Kreis für jedes Paar mit beiden Arten von Pollen, und die Linie, auf der beide gleich oft ansetzen würden.',
  sameCaption: 'Paare mit beiden Arten von Pollen',
  sameColumns: (method: string) => ['Paar (Mutter × Pollen)', 'Frisch', capitalised(storageLabel(method))],
  specification: 'Das Bild der Paare mit beiden Arten von Pollen, für Programme (Vega-Lite)',
  nothingStored: 'Es wurde kein gelagerter Pollen verwendet; es gibt nichts zu vergleichen.',
  lostDifference: (method: string, lowest: number | null, highest: number | null): string => {
    const inTen = (value: number | null) => (value === null ? 'unbekannt' : decimal(10 * value, 1));
    return (
      `Über alle Blüten wäre der Abstand zwischen frischem und ${pollenOf(method, 'dative')} ${inTen(lowest)} bis ${inTen(highest)} ` +
      'Früchte von je 10 Blüten, was auch immer die verlorenen Etiketten verbergen.'
    );
  },
  none: 'keine',
  seasonsCaption: 'Früchte von Blüten nach Saison',
  fathersCaption: 'Früchte von Blüten nach Pollenspender',
  byColumns: (by: 'season' | 'pollenParent', method: string) => [
    by === 'season' ? 'Saison' : 'Pollenspender',
    'Frisch',
    capitalised(storageLabel(method)),
  ],
  ratio: ({ estimate, lower, upper }: Estimate): string =>
    estimate === null
      ? CANNOT_TELL
      : `${decimal(estimate, 2)} (möglich: ${lower === null ? 'alles ab 0' : decimal(lower, 2)} bis ${upper === null ? 'ohne Ende' : decimal(upper, 2)})`,
  oddsCaption: (method: string): string =>
    `Chancen auf eine Frucht, frisch ÷ ${storageLabel(method)}, innerhalb der Paare`,
  oddsColumns: ['Verfahren', 'Chancenverhältnis'],
  commonOdds: 'Gemeinsames Chancenverhältnis',
  conditionalOdds: 'Bedingtes Chancenverhältnis',
  noOdds: 'Es wurde kein gelagerter Pollen verwendet.',
};
