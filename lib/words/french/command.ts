/** What the command tells people besides its results, in French. */

import type { SeasonFile } from '../../season/season.ts';
import { fileSize } from './file-size.ts';
import { counted, joined, wholeNumber } from './numbers.ts';

const LABELS: ReadonlyMap<string, string> = new Map([
  ['results.json', 'Tous les résultats, pour des programmes (JSON)'],
  ['crosses.csv', 'Les croisements tels qu’ils ont été compris (CSV)'],
  ['vials.csv', 'Les tubes tels qu’ils ont été compris (CSV)'],
  ['flowers.csv', 'Les fleurs attendues telles qu’elles ont été comprises (CSV)'],
  ['datapackage.json', 'Ce que signifient les colonnes de ces fichiers (JSON)'],
  ['coded-crosses.csv', 'Les croisements sous codes, à relire (CSV)'],
  ['coded-vials.csv', 'Les tubes sous codes (CSV)'],
  ['coded-flowers.csv', 'Les fleurs attendues sous codes (CSV)'],
]);

export const commandWords = {
  working: 'Calcul en cours…',
  wrote: (file: string): string => `Fichier écrit : ${file}.`,
  standardInput: 'entrée standard',
  wroteTo: (folder: string, names: readonly string[]): string => `Écrit dans ${folder} : ${joined(names)}.`,
  wroteRows: (rows: number, folder: string, names: readonly string[]): string =>
    `${counted(rows, 'ligne écrite', 'lignes écrites')} dans ${folder} : ${joined(names)}.`,
  notWritten: (rows: number, columns: number): string => {
    const parts = [
      ...(rows > 0 ? [`${counted(rows, 'ligne')} avec des erreurs`] : []),
      ...(columns > 0 ? [`${counted(columns, 'colonne')} à vous`] : []),
    ];
    return parts.length === 0 ? '' : `N’y sont pas : ${joined(parts)} ; problems.csv nomme chacune.`;
  },
  keyKept: (file: string): string =>
    `Les noms sont gardés dans ${file} : ne pas le partager. L’utiliser encore pour la prochaine copie, avec --key.`,
  savedSettings: (file: string): string =>
    `fruitodds : réglages enregistrés dans ${file} ; la prochaine fois, donner --settings ${file}`,
  wroteSite: (files: number, bytes: number, folder: string): string =>
    `${counted(files, 'fichier')} (${fileSize(bytes)}) dans ${folder} : y ouvrir index.html.`,
  pageLeftOut: (page: string, packageName: string): string =>
    `fruitodds : la page ${page} manque, car le paquet ${packageName} n’est pas installé.`,
  useOnPast: (useOn: string, last: string): string =>
    `fruitodds : --use-on ${useOn} précède la dernière pollinisation, ${last} : les conseils sur les tubes valent pour un jour passé. ` +
    'Donner un --use-on plus tardif, ou l’ôter des réglages.',
  problems: (errors: number, warnings: number): string => {
    const parts = [
      ...(errors > 0 ? [counted(errors, 'erreur')] : []),
      ...(warnings > 0 ? [counted(warnings, 'avertissement')] : []),
    ];
    return parts.length === 0
      ? ''
      : `fruitodds : ${joined(parts)} dans les fichiers ; fruitodds check les nomme tous.`;
  },
  mendFirst: 'Corriger ce que check a nommé, puis relancer.',
  downloadLabel: (name: string): string => LABELS.get(name) ?? name,
  chartFileLabel: (chart: string): string => `Le graphique « ${chart} », pour des programmes (Vega-Lite)`,
};

const KINDS: Readonly<Record<string, string>> = {
  crosses: 'croisements',
  vials: 'tubes',
  flowers: 'fleurs attendues',
};

/** What kind of file it is. */
export function fileKind(kind: string): string {
  return KINDS[kind] ?? 'aucun de nos fichiers';
}

export const checkWords = {
  rows: ({ kind, rows, used, leftOut }: Pick<SeasonFile, 'kind' | 'rows' | 'used' | 'leftOut'>): string =>
    `${fileKind(kind)}, ${counted(rows, 'ligne')}, ${wholeNumber(used)} ${used < 2 ? 'utilisée' : 'utilisées'}, ${wholeNumber(leftOut)} ${leftOut < 2 ? 'écartée' : 'écartées'}`,
  toMend: (fix: string): string => `À faire : ${fix}`,
  nothing: 'Rien à corriger.',
  errors: 'Erreurs : ce qu’elles nomment est écarté',
  warnings: 'Avertissements : les lignes sont utilisées',
  noticed: 'Remarqué : rien à corriger si c’est juste',
  leftOut: 'Écartées, par raison',
  leftOutFor: (rows: number, reason: string, listed: string): string =>
    `${counted(rows, 'ligne')} : ${reason}${listed && ` (${listed.includes(',') ? 'lignes' : 'ligne'} ${listed})`}`,
  leftOutRow: (row: number, reason: string): string => `La ligne ${row} est écartée : ${reason}`,
  mendOutcome: 'Rien à faire ; dès que le résultat est connu, l’écrire.',
};
