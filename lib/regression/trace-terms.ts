/** What the derivative of log det H needs of each row: where its levels meet in the inverse. */

import type { CurvatureInverse } from './curvature-inverse.ts';
import type { LatentModel } from './latent-model.ts';

/** Terms of n rows. */
export interface TraceTerms {
  /** n for each factor: element of H⁻¹ S z_i at the row's level of the factor. */
  readonly meeting: readonly Float64Array[];
  /** z_i′ S H⁻¹ S z_i. */
  readonly leverage: Float64Array;
}

/** Room for the terms, to be used again and again. */
export function emptyTraceTerms(latent: LatentModel): TraceTerms {
  return {
    meeting: latent.factors.map(() => new Float64Array(latent.n)),
    leverage: new Float64Array(latent.n),
  };
}

/**
 * Fills `meeting` and `leverage`.
 *
 * @param sds one standard deviation a factor
 * @param inverse of the curvature at these
 * @param target receives the terms
 */
export function traceTerms(
  latent: LatentModel,
  sds: Float64Array,
  inverse: CurvatureInverse,
  { meeting, leverage }: TraceTerms,
): void {
  const { factors, eliminated } = latent;
  leverage.fill(0);
  for (const own of meeting) own.fill(0);
  factors.forEach((_, g) => {
    if (g === eliminated) {
      addOwn(factors[g]!.codes, inverse.diagonal, sds[g]!, meeting[g]!);
      return;
    }
    factors.forEach((__, h) => {
      if (h !== eliminated) addMeetings(latent, g, h, sds[h]!, inverse.core, meeting[g]!);
    });
    if (eliminated >= 0) addCross(latent, g, sds, inverse.cross, meeting);
  });
  meeting.forEach((own, g) => {
    for (let i = 0; i < leverage.length; i += 1) leverage[i]! += sds[g]! * own[i]!;
  });
}

/** Adds what a row's eliminated level has of itself. */
function addOwn(codes: Int32Array, diagonal: Float64Array, sd: number, target: Float64Array): void {
  for (let i = 0; i < codes.length; i += 1) {
    if (codes[i]! >= 0) target[i]! += sd * diagonal[codes[i]!]!;
  }
}

/** Adds where a row's level of factor g meets that of factor h, both in the core. */
function addMeetings(
  { factors, factorStart, coreSize }: LatentModel,
  g: number,
  h: number,
  sd: number,
  core: Float64Array,
  target: Float64Array,
): void {
  const [codes, others] = [factors[g]!.codes, factors[h]!.codes];
  const first = factorStart[g]! * coreSize + factorStart[h]!;
  for (let i = 0; i < codes.length; i += 1) {
    if (codes[i]! < 0 || others[i]! < 0) continue;
    target[i]! += sd * core[first + codes[i]! * coreSize + others[i]!]!;
  }
}

/** Adds where a row's level of factor g, in the core, meets its eliminated level: to both. */
function addCross(
  { factors, eliminated, position }: LatentModel,
  g: number,
  sds: Float64Array,
  cross: Float64Array,
  meeting: readonly Float64Array[],
): void {
  const [own, other] = [meeting[g]!, meeting[eliminated]!];
  const [sd, otherSd] = [sds[g]!, sds[eliminated]!];
  for (let i = 0, place = g; i < own.length; i += 1, place += factors.length) {
    if (position[place]! < 0) continue;
    const entry = cross[position[place]!]!;
    own[i]! += otherSd * entry;
    other[i]! += sd * entry;
  }
}
