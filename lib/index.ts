/** fruitodds: the library's door. Every public name, one a line, by topic. */
export type { AnalyseOptions, Analysis } from './analyse.ts';
