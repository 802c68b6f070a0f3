import { describe, expect, it } from 'vitest';
import { pollenOf, storageLabel } from '../../lib/words/storage.ts';

describe('ways of keeping pollen', () => {
  it('have a label and a phrase', () => {
    expect(['fresh', 'room', 'refrigerated', 'frozen'].map(storageLabel)).toEqual([
      'fresh',
      'room temperature',
      'refrigerated',
      'frozen',
    ]);
    expect(['fresh', 'room', 'frozen'].map(pollenOf)).toEqual([
      'fresh pollen',
      'pollen kept at room temperature',
      'frozen pollen',
    ]);
  });

  it('keep the grower’s own word as it stands, whatever it is', () => {
    expect(storageLabel('__proto__')).toBe('__proto__');
    expect(pollenOf('silica')).toBe('pollen stored as “silica”');
  });
});
