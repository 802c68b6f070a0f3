/** fruitodds: the library's door. Every public name, one a line, by topic. */

// A season: from files to the analysis
export type { AnalyseOptions, Analysis } from './analyse.ts';
export { analyse } from './analyse.ts';
export type { SeedList, SeedListEntry } from './analysis/seed-list.ts';
export { seedList } from './analysis/seed-list.ts';
export { NAMED_INCOMPATIBLE } from './analysis/pairs.ts';
export { questions } from './season/problems.ts';
export type { ReadOptions } from './season/read-season.ts';
export { readSeason } from './season/read-season.ts';
export type { Season } from './season/season.ts';
export type { DataPackageWords } from './season/data-package.ts';
export type { SeasonText } from './season/write-season.ts';
export { writeSeason } from './season/write-season.ts';

// Distributions
export { betaCdf, betaDensity, betaQuantile } from './numerics/beta.ts';
export { binomialCdf, binomialDensity, binomialQuantile } from './numerics/binomial.ts';
export { chiSquareCdf, chiSquareDensity, chiSquareQuantile } from './numerics/gamma.ts';
export { gammaCdf, gammaDensity, gammaQuantile } from './numerics/gamma.ts';
export {
  hypergeometricCdf,
  hypergeometricDensity,
  hypergeometricQuantile,
} from './numerics/hypergeometric.ts';
export { normalCdf, normalDensity, normalLogCdf, normalQuantile } from './numerics/normal.ts';
export { normalRangeTail } from './numerics/normal-range.ts';
export { studentCdf, studentDensity, studentQuantile } from './numerics/student.ts';

// A plan carried out
export type { SheetFlower } from './decisions/crossing-sheet.ts';
export { crossingSheetCsv, sheetOf } from './decisions/crossing-sheet.ts';
export type { Mix, MixName } from './decisions/mix.ts';
export { mixOf } from './decisions/mix-names.ts';
export { planWithoutVials } from './decisions/next-season.ts';

// Proportions: one sample
export type { Estimate, Interval, Proportion, Test } from './proportions/interval.ts';
export { agrestiCoull, clopperPearson, jeffreys, midP, wilson } from './proportions/one-sample.ts';

// Proportions: two samples and tables
export { fisherExact } from './proportions/fisher-exact.ts';
export { moverProduct, moverRatio } from './proportions/mover.ts';
export { breslowDay, mantelHaenszel } from './proportions/stratified.ts';
export { oddsRatio, pearsonChiSquare, riskRatio } from './proportions/two-by-two.ts';
export { miettinenNurminen, newcombe } from './proportions/two-sample.ts';

// Power and sample size
export { binomialTest, powerOneProportion } from './proportions/binomial-test.ts';
export { powerOfWilson, sampleSizeOneProportion } from './proportions/one-sample-size.ts';
export { powerPairedDesign, sampleSizePairedDesign } from './proportions/paired-power.ts';
export { powerTwoProportions } from './proportions/power.ts';
export { detectableProportion, sampleSizeTwoProportions } from './proportions/sample-size.ts';

// Regression of a binomial response
export { conditionalLogistic } from './regression/conditional-logistic.ts';
export type { DesignSpec } from './regression/design.ts';
export type { TypedDesign, TypedDesignSpec } from './regression/design-columns.ts';
export { columnsAgain, designColumns } from './regression/design-columns.ts';
export type { DesignTerm } from './regression/design-terms.ts';
export type { Fit } from './regression/fit.ts';
export { logistic } from './regression/logistic.ts';
export { mixedLogistic } from './regression/mixed-logistic.ts';
export { naturalSpline } from './regression/natural-spline.ts';

// What is asked of a fit
export { compareAt } from './regression/comparisons.ts';
export { doseAt } from './regression/dose-at.ts';
export { predictAt } from './regression/predict-at.ts';
export { likelihoodRatio, profileIntervals } from './regression/profile.ts';
export { standardise } from './regression/standardise.ts';
export { waldIntervals } from './regression/terms.ts';

// Checks of a fit
export { aic } from './regression/aic.ts';
export { auc } from './regression/auc.ts';
export { brier, hosmerLemeshow } from './regression/diagnostics.ts';
export { correctIntercept } from './regression/intercept-correction.ts';
export { crossValidate, leaveOneOut } from './regression/leave-one-out.ts';
export { clusterRobust } from './regression/robust.ts';

// Regression of counts and of overdispersed shares
export { betaBinomial } from './regression/beta-binomial.ts';
export type { CountSpec } from './regression/count-design.ts';
export { negativeBinomial } from './regression/negative-binomial.ts';
export { zeroTruncatedNegativeBinomial, zeroTruncatedPoisson } from './regression/zero-truncated.ts';

// Figures of a season
export { ageFigure } from './charts/age.ts';
export { differenceFigure } from './charts/difference.ts';
export type { Figure, FigureTable } from './charts/figure.ts';
export { pairsFigure } from './charts/pairs.ts';
export { planFigure } from './charts/plan.ts';
export { storageFigure } from './charts/rates.ts';
export { seasonFigure } from './charts/season.ts';
export { vialsFigure } from './charts/vials.ts';

// Words of a season
export { codedSaid } from './words/coded.ts';
export { reasonSentence } from './words/english.ts';
export { problemWords } from './words/english-problems.ts';
export { findingsSaid } from './words/findings.ts';
export {
  nextTestSaid,
  olderThanTriedSaid,
  recordSaid,
  testSaid,
  VERDICT_LABELS,
  verdictSaid,
  vialReason,
} from './words/english-vials.ts';
export type { CataloguedProblem } from './words/problem-catalogue.ts';
export { problemCatalogue } from './words/problem-catalogue.ts';
export { fileSize } from './words/file-size.ts';
export * from './words/fellow-growers.ts';
export * from './words/numbers.ts';
export * from './words/old-vials.ts';
export * from './words/page-one.ts';
export * from './words/pair-evidence.ts';
export * from './words/plan.ts';
export * from './words/priors.ts';
export * from './words/review.ts';
export * from './words/season-facts.ts';
export * from './words/seed-list.ts';
export { seedGroups } from './words/told/seeds.ts';
export * from './words/seeds.ts';
export * from './words/settle.ts';
export { pollenOf, storageLabel } from './words/storage.ts';
export { standingOf, standings } from './words/told/vials.ts';
export * from './words/sheet.ts';
export * from './words/working.ts';

// What pages say around their numbers
export * from './words/review-page.ts';
export * from './words/old-vials-page.ts';
export * from './words/next-season-page.ts';
export * from './words/crossing-sheet-page.ts';
export * from './words/seed-list-page.ts';
export * from './words/start-page.ts';
export * from './words/problems-page.ts';
export * from './words/fresh-against-frozen-page.ts';

// Reports
export type { FormulaPart, FormulaTree } from './notebook/formula.ts';
export { formula, fraction, squareRoot } from './notebook/formula.ts';
export type { Html } from './notebook/html.ts';
export { html } from './notebook/html.ts';
export { renderReport } from './notebook/render-report.ts';
export type { Given, Shown } from './notebook/run.ts';
export type { SavedFile } from './notebook/saved-file.ts';
export { savedFile } from './notebook/saved-file.ts';
export { dataTable, fullColumns } from './notebook/table.ts';
