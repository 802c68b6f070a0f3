/** What the season review says in its tables, folds and gaps; its sentences about the data stand in `review.ts`. */

import type { FixedModel } from '../analysis/models.ts';
import { fileKind } from './command.ts';
import { counted } from './numbers.ts';

/** Headings, captions and what stands where there is nothing to show. */
export const reviewPage = {
  noFlowers: 'No flower could be read.',
  leftOutOfSummary: 'What is about single plants, pairs and vials is left out of this summary.',
  reasonsCaption: 'Rows left out, by reason',
  reasonColumns: ['Reason', 'Rows'],
  wavesFold: 'By season and wave',
  wavesCaption: 'Fruit set of each wave of flowers',
  nothingFound: 'The files hold nothing else to look at.',
  toMend: 'Worth a look in the files:',
  noticedFold: 'How headers and words were read',
  nothingStored: 'No stored pollen was used, so there is nothing to compare.',
  pairsDiffer:
    'Stored pollen tends to go to other pairs than fresh pollen does. “Like for like” compares only what happened on the same ' +
    'pairs, so it is the number to go by; it needs at least three pairs that had both kinds and both outcomes.',
  nothingFades: 'No stored pollen was used, so nothing can be said about fading.',
  otherAgesFold: 'Pollen kept in other ways, by age',
  otherAgesCaption: 'Fruit set by age of pollen kept in other ways',
  curveEnds:
    'The curve ends at the oldest pollen that was tried; verdicts on older vials carry it on, and are marked. How pollen germinates on a dish is another question than how it ' +
    'sets fruit; the two can part company.',
  selfIndexesFold: 'The plants’ own pollen, as an index',
  reasonsFold: 'Why, vial by vial',
  verdictsCaption: 'The reason for each verdict',
  verdictColumns: ['Vial', 'Verdict', 'Reason'],
  discardingIsFinal:
    'Discarding pollen is final, and these verdicts are advice from few flowers. Where a verdict surprises you, pollinate two ' +
    'or three flowers with the vial before you act on it.',
  settleFold: 'In numbers',
  settleCaption: 'Flowers that would settle it',
  filesCaption: 'Files that were read',
  fileColumns: ['File', 'Kind', 'Rows', 'SHA-256'],
  fileKind,
  optionsFold: 'The options',
  optionsCaption: 'Options, as they were used',
  made: (version: string, files: number, rows: number): string =>
    `Made by fruitodds ${version} from ${counted(files, 'file')} with ${counted(rows, 'row')} of crosses.`,
};

const METHODS: Readonly<Record<NonNullable<FixedModel['method']>, string>> = {
  firth: 'Firth’s penalised likelihood',
  'maximum-likelihood': 'maximum likelihood',
};

/** The folded tables of the section on how it was worked out. */
export const workingPage = {
  none: 'none',
  span: (lower: string, upper: string): string => `${lower} to ${upper}`,
  textbookFold: 'The textbook model, for statisticians',
  textbookCaption: ({ method, flowers }: Pick<FixedModel, 'method' | 'flowers'>): string =>
    `Logistic regression by ${METHODS[method ?? 'maximum-likelihood']}, logit scale, ${counted(flowers, 'flower')}, no priors`,
  textbookColumns: ['Term', 'Estimate', 'Range', 'p'],
  fit: (auc: string, brier: string): string =>
    `Checks of fit: area under the ROC curve ${auc}, Brier score ${brier}. All flowers are taken alike here, so this model is ` +
    'confounded with pair; it is shown to compare, not to decide.',
  spreadsFold: 'How much plants, pairs and mornings differ',
  spreadsCaption: (flowers: number): string =>
    `Crossed random effects, logit scale, ${counted(flowers, 'flower')}, no priors`,
  spreadColumns: ['Between', 'Standard deviation'],
  spreadsTooSmall:
    'By Laplace’s approximation, which makes these spreads too small where pairs have few flowers: their variances came out about ' +
    '15 in 100 too small on the salamander matings of McCullagh and Nelder (1989).',
  priorsFold: 'The assumptions, as numbers',
  priorsCaption: 'Priors, logit scale',
  priorColumns: ['For', 'Kind', 'Centre', 'Spread'],
};
