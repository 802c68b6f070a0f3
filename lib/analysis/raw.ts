import type { Estimate, Proportion } from '../proportions/interval.ts';

/** What the rate would be if every lost tag had hidden a failure (`lowest`) or a fruit (`highest`). */
export interface LostTagBounds {
  readonly lost: number;
  readonly lowest: Proportion;
  readonly highest: Proportion;
}

/** Bounds for the difference fresh minus stored, when the lost tags of both are taken at their worst. */
export interface LostTagDifference {
  readonly storage: string;
  readonly lowest: Estimate;
  readonly highest: Estimate;
}

export interface AgeBand extends Proportion {
  readonly storage: string;
  /** First and last day of the band; `to` is null for the open last band (366 days and more). */
  readonly from: number;
  readonly to: number | null;
}

/** Key `raw` of the analysis: counts and rates as they stand, no model. */
export interface RawRates {
  readonly overall: Proportion;
  readonly lostTags: {
    readonly overall: LostTagBounds;
    readonly byStorage: readonly (LostTagBounds & { readonly storage: string })[];
    readonly difference: readonly LostTagDifference[];
  };
  readonly byStorage: readonly (Proportion & { readonly storage: string })[];
  readonly bySeedParent: readonly (Proportion & { readonly seedParent: string })[];
  readonly byPollenParent: readonly (Proportion & { readonly pollenParent: string })[];
  readonly byPair: readonly (Proportion & { readonly seedParent: string; readonly pollenParent: string })[];
  readonly byAge: readonly AgeBand[];
  readonly controls: readonly (Proportion & { readonly control: string })[];
}
