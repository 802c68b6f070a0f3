import { describe, expect, it } from 'vitest';
import { unitFactor } from '../../lib/season/units.ts';

describe('unitFactor', () => {
  it('knows the units of each column in four languages, in any case and with or without accents', () => {
    expect(['g', 'GRAMM', 'gramos', 'kg', 'kilogramme'].map((u) => unitFactor('fruit_weight_g', u))).toEqual([
      1, 1, 1, 1000, 1000,
    ]);
    expect(['d', 'Tage', 'dias', 'jours', 'Wochen'].map((u) => unitFactor('pollen_age_days', u))).toEqual([
      1, 1, 1, 1, 7,
    ]);
    expect(['Stk.', 'bluten', 'graines'].map((u) => unitFactor('seeds', u))).toEqual([1, 1, 1]);
  });

  it('has none for what is no unit of the column', () => {
    expect(unitFactor('seeds', 'g')).toBeNull();
    expect(unitFactor('pollen_age_days', 'm')).toBeNull();
    expect(unitFactor('constructor', 'toString')).toBeNull();
  });
});
