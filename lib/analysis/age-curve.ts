import type { Estimate, Interval } from '../proportions/interval.ts';

/** One point of key `ageCurve`: fruit set over all used crosses were all pollen this method at this age. */
export interface AgePoint extends Interval {
  readonly storage: string;
  readonly ageDays: number;
}

/** Key `halfAge`: days until the curve of a method is half of its value at age 0. */
export interface HalfAge extends Estimate {
  readonly storage: string;
  /** Oldest age tried with this method, in days: nothing is claimed past it. */
  readonly oldestAgeDays: number | null;
}
