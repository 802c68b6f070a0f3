/** Products of rows of matrices: most of the time of dense linear algebra. */

/** Product of `length` entries of two arrays; four sums at a time, which the processor can overlap. */
export function rowProduct(
  a: Float64Array,
  from: number,
  b: Float64Array,
  other: number,
  length: number,
): number {
  return continuedProduct(0, 0, 0, 0, a, from, b, other, length);
}

/** The same where the four sums have been begun. */
export function continuedProduct(
  begun0: number,
  begun1: number,
  begun2: number,
  begun3: number,
  a: Float64Array,
  from: number,
  b: Float64Array,
  other: number,
  length: number,
): number {
  let s0 = begun0;
  let s1 = begun1;
  let s2 = begun2;
  let s3 = begun3;
  let k = 0;
  for (; k + 3 < length; k += 4) {
    s0 += a[from + k]! * b[other + k]!;
    s1 += a[from + k + 1]! * b[other + k + 1]!;
    s2 += a[from + k + 2]! * b[other + k + 2]!;
    s3 += a[from + k + 3]! * b[other + k + 3]!;
  }
  for (; k < length; k += 1) s0 += a[from + k]! * b[other + k]!;
  return s0 + s1 + (s2 + s3);
}
