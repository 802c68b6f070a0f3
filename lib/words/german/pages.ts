/** Was die Seiten außer dem Saisonbericht um ihre Zahlen herum sagen. */

import type { Mix } from '../../decisions/mix.ts';
import type { Ceiling, Must } from '../../decisions/plan-problem.ts';
import type { CataloguedProblem } from '../problem-catalogue.ts';
import { crossesTried } from '../told/mixes.ts';
import { pairName } from './choice-figures.ts';
import { crossesIn, flowersIn, vialsIn } from './nouns.ts';
import { counted, wholeNumber } from './numbers.ts';
import { mixGives, mixLabel, mixRisks, mixSeeds } from './plan.ts';

export const oldVialsPage = {
  noVials: 'Es wurde keine Datei mit Röhrchen angegeben.',
  storiesCaption: 'Jedes Röhrchen, das älteste zuerst; „dann“ ist der Tag der Verwendung',
  byRecordCaption: 'Urteile danach, ob ein Röhrchen eigene Blüten hat',
  byRecordFirstColumn: 'Röhrchen',
  noTests: 'Kein Test mit einer oder zwei Blüten würde ein Urteil ändern.',
  tests: 'Tests mit einer oder zwei Blüten, die ein Urteil ändern könnten, der aussichtsreichste zuerst:',
};

type Ends = readonly [most: Mix, least: Mix] | null;

export const nextSeasonPage = {
  noMix: 'Es gibt keine Mischung zu zeigen.',
  mix: (mix: Mix): string =>
    `: ${mixGives(mix)}, ${mixSeeds(mix)}; ${mixRisks(mix)}; ${crossesIn(crossesTried(mix))} versucht.`,
  crossesFold: (mix: Mix): string => `Die Kreuzungen von „${mixLabel(mix.name)}“`,
  crossesCaption: (mix: Mix): string =>
    `Kreuzungen der Mischung „${mixLabel(mix.name)}“, mit der Chance auf mindestens eine Frucht`,
  vialsAdd: (all: Ends, alone: Ends): string => {
    if (all === null) return 'Es gibt keinen Plan zum Vergleichen.';
    if (alone === null)
      return `Ohne die Röhrchen wäre nichts zu kreuzen; mit ihnen könnten die Blüten ${mixGives(all[0])} geben.`;
    const [most, least] = all.map(mixGives);
    const [mostAlone, leastAlone] = alone.map(mixGives);
    return (
      `Mit frischem Pollen allein könnten dieselben Blüten ${mostAlone} geben, oder ${leastAlone}; mit den Röhrchen ${most}, ` +
      `oder ${least}.`
    );
  },
  noWish: 'Es wurde kein Wunsch angegeben: jede Kreuzung darf versucht werden oder nicht.',
  wishes: 'Diese Wünsche wurden angegeben:',
  must: (wish: Must): string => `${pairName(wish)}: mindestens ${wholeNumber(wish.flowers)}`,
  atMost: ({ seedParent, pollenParent, flowers }: Ceiling): string =>
    `${seedParent === undefined ? `Pollen von ${pollenParent}` : pairName({ seedParent, pollenParent })}: höchstens ${wholeNumber(flowers)}`,
};

export const crossingSheetPage = {
  caption: 'Eine Zeile für jede Blüte; abhaken, wenn das Etikett hängt',
  columns: ['Etikett', 'Blüte an', 'Pollen von'],
  file: 'Das Blatt als Kreuzungsdatei zum Ausfüllen (CSV)',
  noFlower: 'Es ist keine Blüte zu bezeichnen.',
  tagDay: 'am',
};

export const seedListPage = { caption: 'Reife Früchte, Samen und Keimung, nach Kreuzung und Saison' };

export const startPage = {
  about: (flowers: number, vials: number, invented: boolean): string =>
    `Diese Seiten entstanden aus ${flowersIn(flowers)}${vials === 0 ? '' : ` und ${vialsIn(vials)}`}.` +
    `${invented ? ' Die Sammlung, ihre Pflanzen und ihre Menschen sind erfunden.' : ''} Am besten mit der ersten beginnen; die anderen sehen genauer hin.`,
  nothingToDownload: 'Es gibt nichts herunterzuladen.',
};

const SEVERITIES: Readonly<Record<CataloguedProblem['severity'], string>> = {
  error: 'Fehler',
  warning: 'Warnung',
  notice: 'Hinweis',
  'error or warning': 'Fehler oder Warnung',
};

export const problemsPage = {
  columns: ['Code', 'Was es heißt, was daraus wird', 'Wie es zu beheben ist'],
  ofFiles: 'Probleme einer ganzen Datei',
  ofRows: 'Probleme einer Zeile',
  cells: ({ code, severity, means, used, mend, example }: CataloguedProblem): readonly string[] => [
    `${code} (${SEVERITIES[severity]})`,
    `${means} ${used}`,
    `${mend} Beispiel: ${example}`,
  ],
  found: (codes: readonly string[]): string =>
    codes.length === 0
      ? 'In den Dateien dieser Saison wurde nichts davon gefunden.'
      : `In den Dateien dieser Saison ${codes.length === 1 ? 'wurde' : 'wurden'} ${counted(codes.length, 'Code', 'Codes')} dieser Seite gefunden: ${codes.join(', ')}.`,
};
