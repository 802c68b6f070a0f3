import { fisherExact } from '../proportions/fisher-exact.ts';
import { type Estimate, type Proportion, unknown } from '../proportions/interval.ts';
import { mantelHaenszel, type Table } from '../proportions/stratified.ts';
import { newcombe } from '../proportions/two-sample.ts';
import { byCodePoint, type Flower } from './flowers.ts';
import { proportionOf } from './proportion.ts';

/** One direction of two plants, seed parent first. */
export interface Direction extends Proportion {
  readonly seedParent: string;
  readonly pollenParent: string;
}

/** Entry of key `reciprocal` of the analysis: A × B against B × A. */
export interface Reciprocal {
  /** The direction whose seed parent stands first by code points. */
  readonly first: Direction;
  readonly second: Direction;
  /** First minus second over all flowers, Newcombe's hybrid score interval. */
  readonly difference: Estimate;
  /** First minus second within storage methods that both directions had (Mantel–Haenszel, Sato's interval). */
  readonly sameStorage: Estimate;
  /** Fisher's exact test of the two rates, two-sided, plain and mid-p. */
  readonly fisher: { readonly p: number; readonly midP: number };
}

function tablesByStorage(first: readonly Flower[], second: readonly Flower[]): Table[] {
  return [...new Set(first.map(({ storage }) => storage))].flatMap((storage): Table[] => {
    const row = (flowers: readonly Flower[]): [number, number] => {
      const own = flowers.filter((flower) => flower.storage === storage);
      const fruits = own.reduce((sum, { fruit }) => sum + fruit, 0);
      return [fruits, own.length - fruits];
    };
    const table: Table = [row(first), row(second)];
    return table[1][0] + table[1][1] > 0 ? [table] : [];
  });
}

function directionOf(flowers: readonly Flower[], level: number): Direction {
  const { seedParent, pollenParent } = flowers[0]!;
  return { seedParent, pollenParent, ...proportionOf(flowers, level) };
}

function compared(first: readonly Flower[], second: readonly Flower[], level: number): Reciprocal {
  const [one, other] = [directionOf(first, level), directionOf(second, level)];
  const tables = tablesByStorage(first, second);
  const counts = [one.fruits, one.flowers, other.fruits, other.flowers] as const;
  return {
    first: one,
    second: other,
    difference: newcombe(...counts, { level }),
    sameStorage:
      tables.length === 0
        ? unknown('no-storage-in-both-directions')
        : mantelHaenszel(tables, { level }).riskDifference,
    fisher: { p: fisherExact(...counts).p, midP: fisherExact(...counts, { midP: 'observed' }).p },
  };
}

/**
 * Reciprocal crosses: every two plants that were crossed both ways.
 *
 * Answers: does it matter which of the two is the mother? Not where the two ways had other pollen: fresh one way and
 * frozen the other tells of the pollen; `sameStorage` compares within each kind.
 *
 * @param flowers used flowers, plants told apart by grower
 * @param options `level` of the ranges, a proportion in (0, 1), 0.95 by default
 * @returns one entry for two plants, most flowers first, ties in code-point order of the first direction
 * @see Newcombe (1998) Stat Med 17:873; Fisher (1935) J R Stat Soc 98:39; Sato (1989) Biometrics 45:1323
 * @example
 * reciprocalCrosses(usedFlowers(season))[0]?.difference; // A × B minus B × A
 */
export function reciprocalCrosses(
  flowers: readonly Flower[],
  { level = 0.95 }: { readonly level?: number } = {},
): Reciprocal[] {
  const byMother = new Map<string, Map<string, Flower[]>>();
  for (const flower of flowers) {
    const fathers = byMother.get(flower.seedParent) ?? new Map<string, Flower[]>();
    byMother.set(flower.seedParent, fathers);
    const own = fathers.get(flower.pollenParent) ?? [];
    fathers.set(flower.pollenParent, own);
    own.push(flower);
  }
  const found = [...byMother].flatMap(([mother, fathers]) =>
    [...fathers].flatMap(([father, first]) => {
      const second = byMother.get(father)?.get(mother);
      return second !== undefined && byCodePoint(mother, father) < 0 ? [compared(first, second, level)] : [];
    }),
  );
  const size = ({ first, second }: Reciprocal) => first.flowers + second.flowers;
  return found.sort(
    (a, b) =>
      size(b) - size(a) ||
      byCodePoint(a.first.seedParent, b.first.seedParent) ||
      byCodePoint(a.first.pollenParent, b.first.pollenParent),
  );
}
