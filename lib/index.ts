/** fruitodds: the library's door. Every public name, one a line, by topic. */
export type { AnalyseOptions, Analysis } from './analyse.ts';

// A season: files, analysis
export { analyse } from './analyse.ts';
export { NAMED_INCOMPATIBLE } from './analysis/seed-parents.ts';
// Figures of a season
export { ageFigure } from './charts/age.ts';
export { differenceFigure } from './charts/difference.ts';
// Reports
export type { Figure, FigureTable } from './charts/figure.ts';
export { pairsFigure } from './charts/pairs.ts';
export { storageFigure } from './charts/rates.ts';
export { seasonFigure } from './charts/season.ts';
export { vialsFigure } from './charts/vials.ts';
export type { Html } from './notebook/html.ts';
export { html } from './notebook/html.ts';
export { renderReport } from './notebook/render-report.ts';
export type { Given, Shown } from './notebook/run.ts';
export type { SavedFile } from './notebook/saved-file.ts';
export { savedFile } from './notebook/saved-file.ts';
export { dataTable } from './notebook/table.ts';
export { readSeason } from './season/read-season.ts';
export type { Season } from './season/season.ts';
// Words of a season
export { reasonSentence } from './words/english.ts';
export { problemWords } from './words/english-problems.ts';
export { vialReason } from './words/english-vials.ts';
export * from './words/numbers.ts';
export * from './words/review.ts';
export { pollenOf, storageLabel } from './words/storage.ts';
