import type { AgeScale } from './models.ts';

/** A prior as it was used, in words a statistician can check: normal, half-normal, truncated normal. */
export interface PriorRecord {
  readonly parameter: string;
  readonly distribution: string;
  readonly centre: number;
  readonly spread: number;
}

/** Key `models.grower`: how the model behind age curves, pairs and vials was worked out. */
export interface GrowerModelRecord {
  readonly flowers: number;
  readonly ageScales: readonly { readonly ageScale: AgeScale; readonly weight: number }[];
  readonly priors: readonly PriorRecord[];
  readonly draws: number;
  /** Number of independent draws these are worth. */
  readonly effectiveDraws: number;
  readonly settled: boolean;
  readonly because?: string;
}
