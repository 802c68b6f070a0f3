import { describe, expect, it } from 'vitest';
import { OWN_SETTINGS, refusedOnPage } from '../../lib/words/own-settings.ts';

describe('the words of settings', () => {
  it('say a wish with its number', () => {
    expect(OWN_SETTINGS.must.said('A × B', 2)).toBe('A × B: at least 2');
    expect(OWN_SETTINGS.atMost.said('A', 5)).toBe('A: at most 5');
    expect(OWN_SETTINGS.same.said('Nocturna', 'nocturna')).toBe('nocturna is Nocturna');
  });

  it.each([
    ['wish-without-flowers', { option: '--must' }],
    ['plant-unknown', { option: '--at-most', plant: 'X', nearest: null }],
    ['settings-not-json', { file: 's.json', cause: 'x' }],
    ['option-value', { option: '--worth', value: '3', rule: 'share', allowed: null, file: 's.json' }],
    ['key-not-ours', { file: 'k.json' }],
    ['dates-too-far', { file: 'k.json' }],
  ] as const)('name no option of the command where nothing could be done: %s', (code, details) => {
    const said = refusedOnPage(code, details);
    expect(said.length).toBeGreaterThan(40);
    expect(said).not.toMatch(/ --[a-z]|undefined/);
  });
});
