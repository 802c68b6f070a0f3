/** fruitodds: the library's door. Every public name, one a line, by topic. */
export type { AnalyseOptions, Analysis } from './analyse.ts';

// Reports
export type { Figure, FigureTable } from './charts/figure.ts';
export type { Html } from './notebook/html.ts';
export { html } from './notebook/html.ts';
export type { Given, Shown } from './notebook/run.ts';
export type { SavedFile } from './notebook/saved-file.ts';
export { savedFile } from './notebook/saved-file.ts';
export { renderReport } from './notebook/render-report.ts';
export { dataTable } from './notebook/table.ts';
