import { describe, expect, it } from 'vitest';
import { savedSettings, settingsFrom } from '../../lib/browser/saved-settings.ts';
import { NO_ANSWERS, NO_SETTINGS } from '../../lib/browser/settings.ts';
import { Failure } from '../../lib/command/failure.ts';
import { readSettings } from '../../lib/command/settings.ts';
import { schemaFaults } from '../schema-validator.ts';

const answers = {
  ...NO_ANSWERS,
  ...{ dateOrder: 'dmy' as const, map: new Map([['Zorn = x', 'outcome']]), samePlants: true },
};
const settings = {
  ...NO_SETTINGS,
  ...{ worth: '33.3', useOn: '2026-06-01', endpoint: 'final' as const, level: '90', asOf: '2025-12-01' },
  ...{ ageScale: 'days' as const, dateSystem: 1904 as const, same: [['A', 'a']] },
  map: [['days', 'pollen_age_days'] as const],
  must: [{ names: 'A × B', flowers: 2 }],
  atMost: [{ names: 'C=c', flowers: 5 }],
};
const nothing = { answers: NO_ANSWERS, settings: NO_SETTINGS };

// The command's own reader is the check: it refuses what it does not know.
describe('saved settings', () => {
  it('are read by the command as what was answered here', () => {
    const text = savedSettings({ answers, settings });
    expect(schemaFaults('settings', JSON.parse(text))).toEqual([]);
    expect([...readSettings('settings.json', text)]).toEqual([
      ['date-order', ['dmy']],
      ['date-system', ['1904']],
      ['map', ['Zorn = x=outcome', 'days=pollen_age_days']],
      ['same', ['A=a']],
      ['same-plants', ['']],
      ['endpoint', ['final']],
      ['level', ['0.9']],
      ['age-scale', ['days']],
      ['worth', ['0.333']],
      ['use-on', ['2026-06-01']],
      ['must', ['A × B=2']],
      ['at-most', ['C=c=5']],
    ]);
  });

  it('leave out what was left to the defaults', () => {
    expect([...readSettings('settings.json', savedSettings(nothing)).keys()]).toEqual(['endpoint']);
  });

  it('are read back as they were, the day of one season apart', () => {
    const back = settingsFrom('s.json', savedSettings({ answers, settings }), nothing);
    const all = [...answers.map, ...settings.map];
    expect(back.answers).toEqual({ ...answers, map: new Map(all) });
    const file = { file: 's.json', sha256: expect.stringMatching(/^[0-9a-f]{64}$/) };
    expect(back.settings).toEqual({ ...settings, map: [], asOf: '', file });
  });

  it('leave as it is what they do not name', () => {
    const back = settingsFrom('s.json', '{ "version": 1, "worth": 0.1 }', { answers, settings });
    expect(back.answers).toEqual(answers);
    expect(back.settings).toMatchObject({ worth: '10', level: '90', must: settings.must });
  });

  it.each(['[]', '{ "version": 1, "worth": 3 }', '{ "version": 1, "must": ["A x B="] }'])(
    'are refused where they cannot be meant: %s',
    (text) => {
      expect(() => settingsFrom('s.json', text, nothing)).toThrow(Failure);
    },
  );
});
