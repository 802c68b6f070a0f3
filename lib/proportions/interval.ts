/**
 * What an estimate looks like everywhere in this library.
 *
 * An end that has no bound, and an estimate the data cannot give, are `null`; never `NaN`, `Infinity` or a
 * clamped number. `because` then holds a code; the sentence for it lives in `words/`.
 */

/** An estimate with a two-sided range, all three finite. */
export interface Interval {
  readonly estimate: number;
  readonly lower: number;
  readonly upper: number;
}

/** An estimate that may be missing, or open at one end. When `estimate` is null, `because` says why. */
export interface Estimate {
  readonly estimate: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly because?: string;
}

/** A count with its rate: `fruits` of `flowers`. With no flowers the rate is null, because `no-flowers`. */
export interface Proportion extends Estimate {
  readonly fruits: number;
  readonly flowers: number;
}

/** The outcome of a hypothesis test. `df` is null where the test is exact. */
export interface Test {
  readonly statistic: number | null;
  readonly df: number | null;
  readonly p: number;
}

/** The outcome of a hypothesis test that the data may not allow. When `p` is null, `because` says why. */
export interface PossibleTest {
  readonly statistic: number | null;
  readonly df: number | null;
  readonly p: number | null;
  readonly because?: string;
}

/** Options of every interval: `level` is the confidence level, a proportion in (0, 1), 0.95 by default. */
export interface LevelOption {
  readonly level?: number;
}

/**
 * An estimate that the data cannot give.
 *
 * @param because code of the reason, for instance `no-flowers`
 */
export function unknown(because: string): Estimate & { readonly because: string } {
  return { estimate: null, lower: null, upper: null, because };
}

/** Throws a RangeError unless `level` is a number strictly between 0 and 1; names `caller` in the message. */
export function checkLevel(caller: string, level: number): void {
  if (!(level > 0 && level < 1)) {
    throw new RangeError(`${caller}: level must be a number between 0 and 1, such as 0.95, got ${level}`);
  }
}
