import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { codeKeyText, keyedDigest, newCodeKey, readCodeKey, withCodes } from '../../lib/season/code-key.ts';

const SECRET = '0123456789abcdef'.repeat(4);
const NONE = { avoid: new Set<string>() };
const key = newCodeKey(SECRET);
const plants = ['Salt Moon', '__proto__', 'constructor', '12', '<b>', 'שלום', '🌵'];

describe('withCodes', () => {
  it('gives every name a code of its own, in an order that is not that of the names', () => {
    const { codes } = withCodes(key, 'plants', plants, NONE);
    expect([...codes.plants.keys()].sort()).toEqual([...plants].sort());
    expect([...codes.plants.values()]).toEqual(['P01', 'P02', 'P03', 'P04', 'P05', 'P06', 'P07']);
    expect([...codes.plants.keys()]).not.toEqual(plants);
  });

  it('orders by the secret, whatever order the names come in', () => {
    const one = withCodes(key, 'plants', plants, NONE);
    expect(withCodes(key, 'plants', [...plants].reverse(), NONE)).toEqual(one);
    const other = withCodes(newCodeKey('f'.repeat(64)), 'plants', plants, NONE);
    expect([...other.codes.plants.keys()]).not.toEqual([...one.codes.plants.keys()]);
  });

  it('keeps the codes of before and numbers on', () => {
    const first = withCodes(key, 'plants', plants, NONE);
    const second = withCodes(first, 'plants', ['Newcomer', ...plants], NONE);
    for (const name of plants) expect(second.codes.plants.get(name)).toBe(first.codes.plants.get(name));
    expect(second.codes.plants.get('Newcomer')).toBe('P08');
  });

  it('passes over a code that is somebody’s name', () => {
    const avoid = new Set(['p01', 'p03']);
    expect([...withCodes(key, 'plants', ['P01', 'b', 'P03'], { avoid }).codes.plants.values()]).toEqual([
      'P02',
      'P04',
      'P05',
    ]);
  });

  it('keeps an order that dates tell anyway', () => {
    const { codes } = withCodes(key, 'seasons', ['2024', '2023'], { ...NONE, inOrder: true });
    expect([...codes.seasons]).toEqual([
      ['2024', 'season 1'],
      ['2023', 'season 2'],
    ]);
  });
});

describe('the file of a key', () => {
  it('gives the key back, hostile names and all', () => {
    const full = { ...withCodes(key, 'plants', plants, NONE), shiftDays: -12 };
    const read = readCodeKey(codeKeyText(full));
    expect(read).toEqual(full);
    expect(read?.codes.plants.get('__proto__')).toMatch(/^P\d\d$/);
  });

  it.each([
    ['no JSON', 'cross_id,pollination_date'],
    ['another JSON', '{"a":1}'],
    ['null', 'null'],
    ['a short secret', codeKeyText(key).replace(SECRET, 'abc')],
    ['half a day', codeKeyText(key).replace('"shiftDays": null', '"shiftDays": 0.5')],
    [
      'a code of another kind',
      codeKeyText(key).replace('"plants": []', '"plants": [{"code":"V01","name":"a"}]'),
    ],
    [
      'one code for two names',
      codeKeyText(key).replace(
        '"plants": []',
        '"plants": [{"code":"P01","name":"a"},{"code":"P01","name":"b"}]',
      ),
    ],
  ])('is not taken from %s', (_, text) => {
    expect(readCodeKey(text)).toBeNull();
  });

  it('refuses a secret that could be guessed', () => {
    expect(() => newCodeKey('secret')).toThrow('newCodeKey: secret must be 64 hexadecimal digits');
  });
});

// node:crypto is the second implementation of SHA-256 here.
it('digests a word with the secret and the purpose', () => {
  const expected = createHash('sha256')
    .update(JSON.stringify([SECRET, 'plants', 'Salt Moon']))
    .digest('hex');
  expect(keyedDigest(key, 'plants', 'Salt Moon')).toBe(expected);
});
