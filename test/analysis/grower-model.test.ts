import { describe, expect, it } from 'vitest';
import { growerModel, priorRecords } from '../../lib/analysis/grower-model.ts';
import { GROWER_PRIORS } from '../../lib/analysis/priors.ts';
import { smallSeason } from './flowers-of.ts';

const flowers = smallSeason();

function fitted(options: Parameters<typeof growerModel>[1]) {
  const model = growerModel(flowers, options);
  if (!('draws' in model)) throw new Error(`the model must fit, but ${model.record.because}`);
  return model;
}

describe('growerModel', () => {
  const model = fitted({ ageScale: null, methods: ['room'] });

  it('averages both age scales by their weights, draw for draw', () => {
    const [log, days] = model.record.ageScales;
    expect([log!.ageScale, days!.ageScale]).toEqual(['log1p-days', 'days']);
    expect(log!.weight + days!.weight).toBeCloseTo(1, 14);
    expect(model.draws).toHaveLength(1000);
    const fromLog = model.draws.filter((draw) => draw.model.ageScale === 'log1p-days').length;
    expect(fromLog).toBe(Math.round(log!.weight * 1000));
  });

  it('averages the probability that a pair never sets fruit in the same way', () => {
    const [log, days] = model.record.ageScales;
    model.models[0]!.pairs.forEach(({ code }, i) => {
      const [a, b] = model.models.map(({ fit }) => fit.exclusive[code]!);
      expect(model.incompatible[i]).toBeCloseTo(log!.weight * a! + days!.weight * b!, 12);
    });
  });

  it('gives the same draws each time', () => {
    expect(fitted({ ageScale: null, methods: ['room'] }).draws[612]!.draw).toEqual(model.draws[612]!.draw);
  });

  it('keeps to one scale where one is asked for', () => {
    const one = fitted({ ageScale: 'days', methods: [] });
    expect(one.record.ageScales).toEqual([{ ageScale: 'days', weight: 1 }]);
    expect(one.draws.every((draw) => draw.model.ageScale === 'days')).toBe(true);
    // Every draw of the one model, each once.
    expect(new Set(one.draws.map(({ draw }) => draw)).size).toBe(1000);
  });

  it('has no scale to weigh where all pollen is fresh', () => {
    const fresh = growerModel(
      flowers.filter(({ storage }) => storage === 'fresh'),
      { ageScale: null, methods: ['frozen'] },
    );
    expect(fresh.record.ageScales).toHaveLength(1);
    expect(fresh.record.settled).toBe(true);
  });

  it('counts the flowers it used, stored ones without an age left out', () => {
    expect(model.record.flowers).toBe(40);
    const without = flowers.map((flower) =>
      flower.storage === 'frozen' ? { ...flower, ageDays: null } : flower,
    );
    const fresh = flowers.filter(({ storage }) => storage === 'fresh').length;
    expect(growerModel(without, { ageScale: null, methods: [] }).record.flowers).toBe(fresh);
  });

  it('says that there is nothing to fit', () => {
    const empty = growerModel([], { ageScale: null, methods: [] });
    expect('draws' in empty).toBe(false);
    expect(empty.record).toMatchObject({ because: 'no-aged-flowers', settled: false, draws: 0, flowers: 0 });
  });

  it('is worth at least 100 independent draws where it says that it has settled', () => {
    expect(model.record.settled).toBe(true);
    expect(model.record.effectiveDraws).toBeGreaterThanOrEqual(100);
  });
});

describe('priorRecords', () => {
  const records = priorRecords(GROWER_PRIORS, ['frozen', 'room']);

  it('writes down every prior of the model in its order, with the age it stands at', () => {
    expect(records.map(({ parameter }) => parameter)).toEqual([
      'fresh pollen, average pair',
      'frozen at age 0 against fresh',
      'frozen after 365 days',
      "pair's share of frozen",
      "pair's mean age of frozen",
      'room at age 0 against fresh',
      'room after 3 days',
      "pair's share of room",
      "pair's mean age of room",
      'standard deviation of seedParent',
      'standard deviation of pollenParent',
      'standard deviation of pair',
      'standard deviation of vial',
      'standard deviation of morning',
      'standard deviation of season',
      'standard deviation of grower',
      'share of incompatible pairs',
    ]);
  });

  it('names the distribution of each', () => {
    const kinds = new Map(records.map(({ parameter, distribution }) => [parameter, distribution]));
    expect(kinds.get('frozen after 365 days')).toBe('normal below 0');
    expect(kinds.get('frozen at age 0 against fresh')).toBe('normal');
    expect(kinds.get('standard deviation of vial')).toBe('half-normal');
    expect(kinds.get('share of incompatible pairs')).toBe('logit-normal');
  });
});
