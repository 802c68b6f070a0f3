/** Seeded random numbers: the same seed gives the same stream on every machine. */

/** A stream of random numbers. */
export interface RandomStream {
  /** Uniform on the open interval (0, 1). */
  readonly uniform: () => number;
  /** Standard normal. */
  readonly normal: () => number;
}

/**
 * A stream from a seed: xoshiro128** (Blackman & Vigna 2021, ACM TOMS 47:36), its state filled by splitmix32;
 * normals by Marsaglia's polar method (Marsaglia & Bray 1964).
 *
 * @param seed a whole number, its lowest 32 bits are used
 */
export function randomStream(seed: number): RandomStream {
  if (!Number.isInteger(seed)) throw new RangeError(`randomStream: seed must be a whole number, got ${seed}`);
  const next = xoshiro(seed);
  // 52 bits and a half: never 0 nor 1, so that logarithms and quantiles stay finite.
  const uniform = (): number => ((next() >>> 6) * 67108864 + (next() >>> 6) + 0.5) / 4503599627370496;
  let spare: number | null = null;
  const normal = (): number => {
    if (spare !== null) {
      const value = spare;
      spare = null;
      return value;
    }
    for (;;) {
      const a = 2 * uniform() - 1;
      const b = 2 * uniform() - 1;
      const square = a * a + b * b;
      if (square >= 1 || square === 0) continue;
      const scale = Math.sqrt((-2 * Math.log(square)) / square);
      spare = b * scale;
      return a * scale;
    }
  };
  return { uniform, normal };
}

function xoshiro(seed: number): () => number {
  let mix = seed | 0;
  // Signed, for unsigned numbers above 2^31 are slower; the bits are the same.
  const state = Int32Array.from({ length: 4 }, () => {
    mix = (mix + 0x9e3779b9) | 0;
    let z = mix ^ (mix >>> 16);
    z = Math.imul(z, 0x21f0aaad);
    z ^= z >>> 15;
    z = Math.imul(z, 0x735a2d97);
    return z ^ (z >>> 15);
  });
  return () => {
    const s1 = state[1]!;
    const s2 = state[2]! ^ state[0]!;
    const s3 = state[3]! ^ s1;
    state[0]! ^= s3;
    state[1] = s1 ^ s2;
    state[2] = s2 ^ (s1 << 9);
    state[3] = rotate(s3, 11);
    return Math.imul(rotate(Math.imul(s1, 5), 7), 9);
  };
}

function rotate(value: number, bits: number): number {
  return (value << bits) | (value >>> (32 - bits));
}
