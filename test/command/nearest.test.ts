import { describe, expect, it } from 'vitest';
import { nearest } from '../../lib/command/nearest.ts';

// Letters to change, counted by hand.
describe('nearest', () => {
  const options = ['--level', '--json', '--vials', '--flowers', '--as-of'];

  it('finds the option of a slip', () => {
    expect(nearest('--levle', options)).toBe('--level');
    expect(nearest('--vial', options)).toBe('--vials');
    expect(nearest('--asof', options)).toBe('--as-of');
  });

  it('finds what a word begins', () => {
    expect(nearest('--flow', options)).toBe('--flowers');
  });

  it('does not guess at a word that is near none', () => {
    expect(nearest('--orchestra', options)).toBeNull();
    expect(nearest('--', options)).toBeNull();
  });
});
