/** Was der Saisonbericht in Tabellen, Falten und Lücken sagt. */

import type { FixedModel } from '../../analysis/models.ts';
import { fileKind } from './command.ts';
import { flowersIn } from './nouns.ts';
import { counted } from './numbers.ts';

export const reviewPage = {
  noFlowers: 'Keine Blüte war lesbar.',
  leftOutOfSummary: 'Was einzelne Pflanzen, Paare und Röhrchen betrifft, fehlt in dieser Zusammenfassung.',
  reasonsCaption: 'Ausgelassene Zeilen nach Grund',
  reasonColumns: ['Grund', 'Zeilen'],
  wavesFold: 'Nach Saison und Blütenwelle',
  wavesCaption: 'Fruchtansatz jeder Blütenwelle',
  nothingFound: 'Sonst ist an den Dateien nichts zu sehen.',
  toMend: 'In den Dateien lohnt ein Blick:',
  noticedFold: 'Wie Kopfzeilen und Wörter gelesen wurden',
  nothingStored: 'Es wurde kein gelagerter Pollen verwendet; es gibt nichts zu vergleichen.',
  pairsDiffer:
    'Gelagerter Pollen kommt oft auf andere Paare als frischer. „Bei gleichen Paaren“ vergleicht nur, was auf denselben Paaren ' +
    'geschah, darum gilt diese Zahl; sie braucht mindestens drei Paare mit beiden Arten und beiden Ergebnissen.',
  nothingFades: 'Es wurde kein gelagerter Pollen verwendet; über das Nachlassen lässt sich nichts sagen.',
  otherAgesFold: 'Anders gelagerter Pollen, nach Alter',
  otherAgesCaption: 'Fruchtansatz nach Alter bei anders gelagertem Pollen',
  curveEnds:
    'Die Kurve endet beim höchsten erprobten Alter; Urteile über ältere Röhrchen setzen sie fort und sind mit * versehen. Wie Pollen auf einer Schale keimt, ist eine andere Frage als wie ' +
    'er Früchte ansetzt; beides kann auseinandergehen.',
  selfIndexesFold: 'Der eigene Pollen der Pflanzen, als Kennzahl',
  reasonsFold: 'Warum, Röhrchen für Röhrchen',
  verdictsCaption: 'Der Grund für jedes Urteil',
  verdictColumns: ['Röhrchen', 'Urteil', 'Grund'],
  discardingIsFinal:
    'Pollen zu entsorgen ist endgültig, und diese Urteile sind ein Rat aus wenigen Blüten. Wo ein Urteil überrascht, erst zwei oder ' +
    'drei Blüten mit dem Röhrchen bestäuben.',
  settleFold: 'In Zahlen',
  settleCaption: 'Blüten, die es klären würden',
  filesCaption: 'Gelesene Dateien',
  fileColumns: ['Datei', 'Art', 'Zeilen', 'SHA-256'],
  fileKind,
  optionsFold: 'Die Optionen',
  optionsCaption: 'Optionen, wie sie verwendet wurden',
  made: (version: string, files: number, rows: number): string =>
    `Erstellt mit fruitodds ${version} aus ${counted(files, 'Datei', 'Dateien')} mit ${counted(rows, 'Zeile', 'Zeilen')} Kreuzungen.`,
};

const METHODS: Readonly<Record<NonNullable<FixedModel['method']>, string>> = {
  firth: 'mit Firths bestrafter Likelihood',
  'maximum-likelihood': 'nach Maximum-Likelihood',
};

export const workingPage = {
  none: 'keine',
  span: (lower: string, upper: string): string => `${lower} bis ${upper}`,
  textbookFold: 'Das Lehrbuchmodell, für Statistiker',
  textbookCaption: ({ method, flowers }: Pick<FixedModel, 'method' | 'flowers'>): string =>
    `Logistische Regression ${METHODS[method ?? 'maximum-likelihood']}, Logit-Skala, ${flowersIn(flowers)}, ohne Prior-Verteilungen`,
  textbookColumns: ['Term', 'Schätzung', 'Spanne', 'p'],
  fit: (auc: string, brier: string): string =>
    `Güte der Anpassung: Fläche unter der ROC-Kurve ${auc}, Brier-Wert ${brier}. Hier gelten alle Blüten als gleich, darum ist dieses ` +
    'Modell mit dem Paar vermengt; es steht zum Vergleich da, nicht zum Entscheiden.',
  spreadsFold: 'Wie sehr sich Pflanzen, Paare und Morgen unterscheiden',
  spreadsCaption: (flowers: number): string =>
    `Gekreuzte zufällige Effekte, Logit-Skala, ${flowersIn(flowers)}, ohne Prior-Verteilungen`,
  spreadColumns: ['Zwischen', 'Standardabweichung'],
  spreadsTooSmall:
    'Nach Laplaces Näherung, die diese Streuungen zu klein macht, wo Paare wenige Blüten haben: die Varianzen kamen bei den ' +
    'Salamanderpaarungen von McCullagh und Nelder (1989) um etwa 15 von je 100 zu klein heraus.',
  priorsFold: 'Die Annahmen, als Zahlen',
  priorsCaption: 'Prior-Verteilungen, Logit-Skala',
  priorColumns: ['Für', 'Art', 'Mitte', 'Streuung'],
};
