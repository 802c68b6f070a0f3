import { expect, it } from 'vitest';
import { newCodeKey, withCodes } from '../../lib/season/code-key.ts';
import { secretsOf, singleCodes } from '../../lib/season/secrets.ts';
import { crossesFile, seasonOf } from '../season-of.ts';

it('lists each thing of the grower’s own once, with what it is', () => {
  const cross = {
    grower: 'Ina',
    note: 'bee seen',
    identifiedBy: 'Ole',
    wave: 'late',
    storage: 'the blue box',
  };
  const file = { ...crossesFile(2, 2), file: 'C:\\Users\\ina\\2025 crosses.csv', sha256: 'ab'.repeat(32) };
  const secrets = secretsOf(seasonOf([cross, { ...cross, crossId: 'R-2' }], { files: [file] }), ['Mutter']);
  expect(secrets.map(({ what, value }) => `${what}: ${value}`)).toEqual([
    'the plant: Lantern Creek',
    'the plant: Salt Moon',
    'the tag: 1',
    'the tag: R-2',
    'the grower: Ina',
    'the season: 2025',
    'the wave: late',
    'the storage: the blue box',
    'the person: Ole',
    'the note: bee seen',
    'the date: 2025-06-20',
    'the file: C:\\Users\\ina\\2025 crosses.csv',
    'the file: 2025 crosses.csv',
    `the hash: ${'ab'.repeat(32)}`,
    'the header: Mutter',
  ]);
});

it('holds the four known storage words for nobody’s secret', () => {
  expect(secretsOf(seasonOf([{ storage: 'frozen' }]), []).map(({ value }) => value)).not.toContain('frozen');
});

it('lists the codes of single plants, vials and tags', () => {
  const avoid = new Set<string>();
  const key = withCodes(withCodes(newCodeKey('5'.repeat(64)), 'plants', ['A'], { avoid }), 'growers', ['B'], {
    avoid,
  });
  expect(singleCodes(key).map(({ value }) => value)).toEqual(['P01']);
});
