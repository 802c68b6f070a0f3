import { describe, expect, it } from 'vitest';
import { strangerKeys, streamFor } from '../../lib/analysis/strangers.ts';
import type { Vial } from '../../lib/season/season.ts';

const first = (kind: string, names: readonly string[]) => streamFor(kind, names).uniform();

describe('streamFor', () => {
  it('gives the same draws for the same names, whenever it is asked', () => {
    const once = first('pair', ['Ash Lantern', 'Blue Hour']);
    first('pair', ['Cold Ember', 'Blue Hour']);
    expect(first('pair', ['Ash Lantern', 'Blue Hour'])).toBe(once);
  });

  it('tells kinds, orders and borders of names apart', () => {
    const draws = [
      first('pair', ['A', 'B']),
      first('pair', ['B', 'A']),
      first('vial', ['A', 'B']),
      first('pair', ['AB', '']),
      first('pair', ['A,B']),
      first('pair', ['A","B']),
    ];
    expect(new Set(draws).size).toBe(draws.length);
  });

  it('takes any name', () => {
    for (const name of ['__proto__', 'constructor', '<script>', '', '月下美人', '\u{1f335}']) {
      expect(first('seedParent', [name])).toBeGreaterThan(0);
    }
  });

  it('makes streams of like names that know nothing of each other', () => {
    // Correlation of 500 first draws with those of the neighbouring name: about N(0, 1 / 500).
    const draws = Array.from({ length: 501 }, (_, k) => first('vial', [`V${k}`]));
    const mean = draws.reduce((a, b) => a + b, 0) / draws.length;
    let product = 0;
    let square = 0;
    for (let k = 0; k < 500; k += 1) {
      product += (draws[k]! - mean) * (draws[k + 1]! - mean);
      square += (draws[k]! - mean) ** 2;
    }
    expect(Math.abs(product / square)).toBeLessThan(4 / Math.sqrt(500));
    expect(Math.abs(mean - 0.5)).toBeLessThan(4 * Math.sqrt(1 / 12 / 501));
  });
});

describe('strangerKeys', () => {
  const vial = (name: string, pollenParent: string, collected: string): Vial => ({
    ...{ file: 'vials.csv', line: 1, row: 1 },
    ...{ storage: 'frozen', dosesLeft: 3, thaws: null, note: null },
    ...{ vial: name, pollenParent, collected },
  });
  const ranks = { plants: new Map([['Seen', 0]]), vials: new Map(), growers: new Map() };
  const keys = (names: readonly string[], father: string) =>
    strangerKeys(ranks, [
      vial(names[0]!, 'Seen', '2025-06-01'),
      vial(names[1]!, father, '2024-06-01'),
      vial(names[2]!, 'Seen', '2023-06-01'),
    ]);

  it('knows vials by what they are, whatever they and their fathers are called', () => {
    const one = keys(['V1', 'V2', 'V3'], 'Unseen');
    const other = keys(['b', 'c', 'a'], 'A stranger');
    expect(['V1', 'V2', 'V3'].map(one.vial)).toEqual(['b', 'c', 'a'].map(other.vial));
    expect(new Set(['V1', 'V2', 'V3'].map(one.vial)).size).toBe(3);
    expect(other.plant('A stranger')).toBe(one.plant('Unseen'));
  });

  it('never takes one plant for another', () => {
    const { plant } = keys(['V1', 'V2', 'V3'], 'Unseen');
    const all = ['Seen', 'Unseen', 'Nowhere', '0', '-1', '-2'].map((name) => JSON.stringify(plant(name)));
    expect(new Set(all).size).toBe(6);
    expect(strangerKeys(undefined, []).plant('Seen')).toBe('Seen');
  });
});
