import type { Estimate } from '../proportions/interval.ts';

export type VialVerdict = 'keep' | 'use-first' | 'test-first' | 'discard';

/** One entry of key `vials`: what a stored pollen lot is expected to give on the day of use. */
export interface VialAdvice extends Estimate {
  readonly vial: string;
  readonly pollenParent: string;
  readonly storage: string;
  /** Age in days on the day of use. */
  readonly ageDays: number;
  /** The vial's own record: fruits of flowers with a known outcome. */
  readonly fruits: number;
  readonly flowers: number;
  readonly dosesLeft: number | null;
  /** Seed parents the estimate is averaged over; weights add up to 1. */
  readonly over: readonly { readonly seedParent: string; readonly weight: number }[];
  readonly probabilityWorth: number | null;
  /** The same a year after the day of use. */
  readonly probabilityWorthYearLater: number | null;
  readonly flowersFor90: number | null;
  readonly verdict: VialVerdict;
  readonly reasonCode: string;
  /** Whether no other vial of this pollen parent is left. */
  readonly lastOfParent: boolean;
  /** Codes of warnings, for instance `last-vial`. */
  readonly warnings: readonly string[];
}
