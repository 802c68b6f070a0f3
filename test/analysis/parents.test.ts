import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Flower, usedFlowers } from '../../lib/analysis/flowers.ts';
import type { AgeScale } from '../../lib/analysis/models.ts';
import { parentsModel } from '../../lib/analysis/parents.ts';
import type { Cross } from '../../lib/season/season.ts';
import { referenceSeason } from '../reference-season.ts';
import { seasonOf } from '../season-of.ts';

interface ParentsCase {
  readonly id: string;
  readonly data: string;
  readonly ageScale: AgeScale;
  readonly flowers: number;
  readonly terms: readonly string[];
  readonly estimate: readonly number[];
  readonly se: readonly number[];
  readonly sd: Readonly<Record<string, number>>;
  readonly seedParents: readonly string[];
  readonly seedParentModes: readonly number[];
  readonly logLik: number;
}

const { cases, tolerance } = JSON.parse(
  readFileSync(new URL('../reference/parents-model.json', import.meta.url), 'utf8'),
) as { cases: ParentsCase[]; tolerance: { estimate: number; se: number; sd: number; logLik: number } };

// R 4.2.2 with lme4 1.1-31 at a tight tolerance: scripts/reference/parents-model.R.
describe.each(cases)('parentsModel of $id', (expected) => {
  const model = parentsModel(usedFlowers(referenceSeason(expected.data)), { ageScale: expected.ageScale });

  it("has the terms, estimates and standard errors of lme4's fit", () => {
    expect(model.flowers).toBe(expected.flowers);
    const terms = new Map(model.terms.map((term) => [term.term, term]));
    expect([...terms.keys()].sort()).toEqual([...expected.terms].sort());
    expected.terms.forEach((name, j) => {
      const { estimate, se } = terms.get(name)!;
      expect(Math.abs(estimate - expected.estimate[j]!)).toBeLessThan(tolerance.estimate * expected.se[j]!);
      expect(Math.abs(se / expected.se[j]! - 1)).toBeLessThan(tolerance.se);
    });
    expect(Math.abs(model.logLik! - expected.logLik)).toBeLessThan(tolerance.logLik);
  });

  it('has its variances, a 0 among them, and its conditional modes', () => {
    expect(Object.keys(model.variances).sort()).toEqual(Object.keys(expected.sd).sort());
    for (const [effect, sd] of Object.entries(expected.sd)) {
      expect(Math.abs(Math.sqrt(model.variances[effect]!) - sd)).toBeLessThan(tolerance.sd);
    }
    expect(model.singular).toEqual(['pair']);
    const effects = model.effects.filter(({ effect }) => effect === 'seedParent');
    const modes = new Map(effects.map(({ level, estimate }) => [level, estimate]));
    expect(modes.size).toBe(expected.seedParents.length);
    expected.seedParents.forEach((plant, k) => {
      expect(Math.abs(modes.get(plant)! - expected.seedParentModes[k]!)).toBeLessThan(2e-3);
    });
  });
});

type Row = readonly [
  seedParent: string,
  pollenParent: string,
  fruits: number,
  flowers: number,
  rest?: Partial<Cross> | undefined,
];

function flowersOfPairs(rows: readonly Row[]): Flower[] {
  return usedFlowers(
    seasonOf(
      rows.flatMap(([seedParent, pollenParent, fruits, flowers, rest]) =>
        Array.from(
          { length: flowers },
          (_, i): Partial<Cross> => ({
            seedParent,
            pollenParent,
            outcome: i < fruits ? 'fruit' : 'none',
            ...rest,
          }),
        ),
      ),
    ),
  );
}

const frozen = (ageDays: number | null, vial: string | null = null): Partial<Cross> => ({
  storage: 'frozen',
  ageDays,
  vial,
});

// Three seed parents by three pollen parents, five fresh flowers a pair and four frozen ones in two pairs.
const season: readonly Row[] = [
  ['Ash', 'Dew', 4, 5],
  ['Ash', 'Elm', 2, 5],
  ['Ash', 'Fen', 3, 5],
  ['Bay', 'Dew', 3, 5],
  ['Bay', 'Elm', 0, 5],
  ['Bay', 'Fen', 2, 5],
  ['Cob', 'Dew', 5, 5],
  ['Cob', 'Elm', 3, 5],
  ['Cob', 'Fen', 3, 5],
  ['Ash', 'Dew', 2, 4, frozen(100, 'V1')],
  ['Bay', 'Fen', 1, 4, frozen(300, 'V2')],
  ['Cob', 'Elm', 1, 4, frozen(200, 'V1')],
];

// What is in a model follows from the rows; no source needed.
describe('parentsModel', () => {
  it('names a pair by its two parents, seed parent first', () => {
    const { effects } = parentsModel(flowersOfPairs(season));
    const pairs = effects.filter(({ effect }) => effect === 'pair');
    expect(pairs).toHaveLength(9);
    expect(pairs[1]).toMatchObject({ level: 'Ash × Elm', seedParent: 'Ash', pollenParent: 'Elm' });
  });

  it('has a vial effect for two vials or more, and none for fresh pollen; a morning effect for several', () => {
    const several = parentsModel(flowersOfPairs(season));
    expect(Object.keys(several.variances)).toEqual(['seedParent', 'pollenParent', 'pair', 'vial']);
    expect(several.effects.filter(({ effect }) => effect === 'vial').map(({ level }) => level)).toEqual([
      'V1',
      'V2',
    ]);
    const oneVial = season.map(([a, b, r, n, rest]): Row => [a, b, r, n, { ...rest, vial: 'V1' }]);
    expect(Object.keys(parentsModel(flowersOfPairs(oneVial)).variances)).toEqual([
      'seedParent',
      'pollenParent',
      'pair',
    ]);
    const mornings = season.map(
      ([a, b, r, n, rest], i): Row => [a, b, r, n, { ...rest, pollinationDate: `2025-06-2${i % 3}` }],
    );
    expect(Object.keys(parentsModel(flowersOfPairs(mornings)).variances)).toContain('morning');
  });

  // Found by a reader: five flowers printed "seed parents 43.02" as a standard deviation.
  it('has no spread where some plants always took and the others never did: the likelihood rises without end', () => {
    const rows: readonly Row[] = [
      ['Ada', 'Bea', 1, 1],
      ['Bea', 'Ada', 0, 1],
      ['Ada', 'Cleo', 1, 1],
      ['Cleo', 'Ada', 1, 1],
    ];
    const model = parentsModel(flowersOfPairs(rows));
    expect(model).toMatchObject({ variances: {}, terms: [], effects: [], because: 'spread-without-end' });
    // A slow second writing: the marginal likelihood of the three seed parents by plain summation over their effects.
    const loss = (centre: number, sd: number) => {
      const steps = 4000;
      const chance = (fruits: number, flowers: number) => {
        let sum = 0;
        for (let k = 0; k < steps; k += 1) {
          const z = -8 + (16 * (k + 0.5)) / steps;
          const p = 1 / (1 + Math.exp(-centre - sd * z));
          sum +=
            (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * p ** fruits * (1 - p) ** (flowers - fruits);
        }
        return (sum * 16) / steps;
      };
      return -Math.log(chance(2, 2) * chance(0, 1) * chance(1, 1));
    };
    const best = (sd: number) => Math.min(...Array.from({ length: 81 }, (_, k) => loss((sd * k) / 40, sd)));
    const losses = [1, 3, 10, 30, 100].map(best);
    expect(losses).toEqual([...losses].sort((a, b) => b - a));
  });

  it('leaves out rows without an age', () => {
    const blank: Row = ['Ash', 'Elm', 1, 3, frozen(null)];
    const model = parentsModel(flowersOfPairs([...season, blank]));
    expect(model.flowers).toBe(57);
    expect(model.logLik).toBeCloseTo(parentsModel(flowersOfPairs(season)).logLik!, 9);
  });

  it('says which terms it left out: one age only, or one method a pair', () => {
    const oneAge = season.map(([a, b, r, n, rest]): Row => [a, b, r, n, rest && frozen(200)]);
    expect(parentsModel(flowersOfPairs(oneAge)).withoutTerms).toEqual(['age: frozen', 'mean age: frozen']);
    const apart: readonly Row[] = [
      ...season.slice(0, 9),
      ['Dew', 'Ash', 2, 4, frozen(100)],
      ['Fen', 'Bay', 1, 4, frozen(300)],
      ['Elm', 'Cob', 1, 4, frozen(200)],
    ];
    expect(parentsModel(flowersOfPairs(apart)).withoutTerms).toEqual(['share: frozen', 'mean age: frozen']);
  });

  it('leaves out an effect whose levels are those of another: each seed parent with one pollen parent', () => {
    const apart: readonly Row[] = [
      ['Ash', 'Dew', 4, 5],
      ['Bay', 'Dew', 2, 5],
      ['Cob', 'Elm', 3, 5],
      ['Fen', 'Elm', 1, 5],
    ];
    const model = parentsModel(flowersOfPairs(apart));
    expect(model.withoutEffects).toEqual(['pair']);
    expect(Object.keys(model.variances)).toEqual(['seedParent', 'pollenParent']);
    expect(model.effects.some(({ effect }) => effect === 'pair')).toBe(false);
  });

  it('has no reference but the commonest method where no flower was fresh', () => {
    const stored = season.map(
      ([a, b, r, n, rest], i): Row => [a, b, r, n, rest ?? { storage: 'refrigerated', ageDays: 1 + (i % 4) }],
    );
    const names = parentsModel(flowersOfPairs(stored)).terms.map(({ term }) => term);
    expect(names).toContain('storage: frozen');
    expect(names).toContain('age: refrigerated');
    expect(names).not.toContain('storage: refrigerated');
  });

  it('keeps plants of any name apart', () => {
    const names = new Map([
      ['Ash', '__proto__'],
      ['Bay', '12'],
      ['Dew', '<script>'],
    ]);
    const odd = season.map(([a, b, r, n, rest]): Row => [names.get(a) ?? a, names.get(b) ?? b, r, n, rest]);
    const model = parentsModel(flowersOfPairs(odd));
    expect(model.logLik).toBe(parentsModel(flowersOfPairs(season)).logLik);
    expect(model.effects[0]!.level).toBe('__proto__');
  });

  it('widens its ranges with the level', () => {
    const flowers = flowersOfPairs(season);
    const [narrow] = parentsModel(flowers, { level: 0.8 }).terms;
    const [wide] = parentsModel(flowers, { level: 0.99 }).terms;
    // Normal quantiles 2.5758 and 1.2816 (any table).
    expect((wide!.upper! - wide!.estimate) / (narrow!.upper! - narrow!.estimate)).toBeCloseTo(
      2.5758 / 1.2816,
      3,
    );
  });

  it('gives a reason instead of a fit where the flowers cannot tell', () => {
    const reason = (rows: readonly Row[]): string | undefined => parentsModel(flowersOfPairs(rows)).because;
    expect(reason([])).toBe('no-flowers');
    expect(reason([['Ash', 'Dew', 1, 2, frozen(null)]])).toBe('no-aged-flowers');
    expect(reason([['Ash', 'Dew', 1, 2]])).toBe('fewer-than-two-pairs');
    expect(
      reason([
        ['Ash', 'Dew', 2, 2],
        ['Bay', 'Dew', 2, 2],
      ]),
    ).toBe('one-outcome');
    expect(
      reason([
        ['Ash', 'Dew', 5, 5],
        ['Bay', 'Dew', 4, 4],
        ['Ash', 'Dew', 0, 5, frozen(9)],
        ['Bay', 'Dew', 0, 4, frozen(9)],
      ]),
    ).toBe('terms-separated');
    expect(parentsModel([])).toMatchObject({ terms: [], effects: [], variances: {}, logLik: null });
  });
});
