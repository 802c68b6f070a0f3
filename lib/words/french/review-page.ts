/** What the season review says beside its sentences: captions, headings of tables, folds. */
import type { FixedModel } from '../../analysis/models.ts';
import { fileKind } from './command.ts';
import { counted } from './numbers.ts';

export const reviewPage = {
  noFlowers: 'Aucune fleur n’a pu être lue.',
  leftOutOfSummary:
    'Ce qui concerne une seule plante, un seul couple ou un seul tube est laissé de côté dans ce résumé.',
  reasonsCaption: 'Lignes laissées de côté, par raison',
  reasonColumns: ['Raison', 'Lignes'],
  wavesFold: 'Par saison et par vague',
  wavesCaption: 'Nouaison de chaque vague de fleurs',
  nothingFound: 'Les fichiers ne contiennent rien d’autre à regarder.',
  toMend: 'À regarder dans les fichiers :',
  noticedFold: 'Comment les en-têtes et les mots ont été lus',
  nothingStored: 'Aucun pollen stocké n’a été utilisé : il n’y a rien à comparer.',
  pairsDiffer:
    'Le pollen stocké va volontiers à d’autres couples que le pollen frais. « À couples égaux » ne compare que ce qui s’est ' +
    'passé sur les mêmes couples : c’est donc le nombre à suivre. Il demande au moins trois couples ayant reçu les deux sortes ' +
    'de pollen et donné les deux résultats.',
  nothingFades: 'Aucun pollen stocké n’a été utilisé : on ne peut rien dire de son déclin.',
  otherAgesFold: 'Pollen gardé autrement, par âge',
  otherAgesCaption: 'Nouaison par âge du pollen gardé autrement',
  curveEnds:
    'La courbe s’arrête au pollen le plus vieux essayé ; les verdicts sur des tubes plus vieux la prolongent et sont marqués. La germination du pollen sur une lame est une autre ' +
    'question que la nouaison ; les deux peuvent diverger.',
  selfIndexesFold: 'Le propre pollen des plantes, en indice',
  reasonsFold: 'Pourquoi, tube par tube',
  verdictsCaption: 'La raison de chaque verdict',
  verdictColumns: ['Tube', 'Verdict', 'Raison'],
  discardingIsFinal:
    'Jeter du pollen est définitif, et ces verdicts sont des conseils tirés de peu de fleurs. Si un verdict surprend, polliniser ' +
    'deux ou trois fleurs avec le tube avant d’agir.',
  settleFold: 'En nombres',
  settleCaption: 'Les fleurs qui trancheraient',
  filesCaption: 'Fichiers lus',
  fileColumns: ['Fichier', 'Sorte', 'Lignes', 'SHA-256'],
  fileKind,
  optionsFold: 'Les options',
  optionsCaption: 'Options, telles qu’elles ont servi',
  made: (version: string, files: number, rows: number): string =>
    `Fait par fruitodds ${version} à partir de ${counted(files, 'fichier')} avec ${counted(rows, 'ligne')} de croisements.`,
};

const METHODS: Readonly<Record<NonNullable<FixedModel['method']>, string>> = {
  firth: 'la vraisemblance pénalisée de Firth',
  'maximum-likelihood': 'le maximum de vraisemblance',
};

export const workingPage = {
  none: 'aucun',
  span: (lower: string, upper: string): string => `${lower} à ${upper}`,
  textbookFold: 'Le modèle des manuels, pour statisticiens',
  textbookCaption: ({ method, flowers }: Pick<FixedModel, 'method' | 'flowers'>): string =>
    `Régression logistique par ${METHODS[method ?? 'maximum-likelihood']}, échelle logit, ${counted(flowers, 'fleur')}, sans a priori`,
  textbookColumns: ['Terme', 'Estimation', 'Fourchette', 'p'],
  fit: (auc: string, brier: string): string =>
    `Contrôles de l’ajustement : aire sous la courbe ROC ${auc}, score de Brier ${brier}. Toutes les fleurs y comptent de la même ` +
    'façon : ce modèle confond donc pollen et couple ; il est montré pour comparer, pas pour décider.',
  spreadsFold: 'Combien diffèrent les plantes, les couples et les matins',
  spreadsCaption: (flowers: number): string =>
    `Effets aléatoires croisés, échelle logit, ${counted(flowers, 'fleur')}, sans a priori`,
  spreadColumns: ['Entre', 'Écart-type'],
  spreadsTooSmall:
    'Par l’approximation de Laplace, qui rend ces écarts trop petits quand les couples ont peu de fleurs : leurs variances étaient ' +
    'environ 15 pour 100 trop petites sur les accouplements de salamandres de McCullagh et Nelder (1989).',
  priorsFold: 'Les hypothèses, en nombres',
  priorsCaption: 'Lois a priori, échelle logit',
  priorColumns: ['Pour', 'Sorte', 'Centre', 'Dispersion'],
};
