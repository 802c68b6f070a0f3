import { describe, expect, it } from 'vitest';
import { Failure } from '../../lib/command/failure.ts';
import { OPTION_RULES } from '../../lib/command/option-rules.ts';
import { valuesOf } from '../../lib/command/option-words.ts';
import { overSettings, readSettings, SETTING_NAMES, settingsText } from '../../lib/command/settings.ts';
import { schemaFaults } from '../schema-validator.ts';

const valuesFrom = (...argv: string[]) => valuesOf(argv, OPTION_RULES).values;

function failureOf(text: string): Pick<Failure, 'code' | 'details'> {
  try {
    readSettings('mine.json', text);
  } catch (error) {
    if (error instanceof Failure) return error;
    throw error;
  }
  throw new Error(`expected a failure of: ${text}`);
}

const EVERY = valuesFrom(
  ...['--date-order', 'dmy', '--date-system', '1904', '--map', '__proto__=vial', '--map', 'a=b=seed_parent'],
  ...[
    '--same',
    'A=B',
    '--storage',
    'cold=frozen',
    '--same-plants',
    '--endpoint',
    'final',
    '--level',
    '0.9',
    '--age-scale',
    'days',
  ],
  ...['--worth', '0.2', '--use-on', '2027-06-01', '--language', 'en', '--as-of', '2026-09-01', '--json'],
  ...['--must', 'A x B=2', '--at-most', 'A=5'],
);

describe('a file of settings', () => {
  it('is read back as it was saved, keeps to its schema, and has nothing of one season', () => {
    const text = settingsText(EVERY);
    expect(schemaFaults('settings', JSON.parse(text))).toEqual([]);
    const kept = [...EVERY].filter(([name]) => name !== 'as-of' && name !== 'json');
    expect(readSettings('mine.json', text)).toEqual(new Map(kept));
    expect(Object.keys(JSON.parse(text))).toEqual(['version', ...SETTING_NAMES]);
    expect(text.endsWith('}\n')).toBe(true);
  });

  it('is nothing but its version where nothing was said', () => {
    expect(JSON.parse(settingsText(valuesFrom('--json')))).toEqual({ version: 1 });
    expect(readSettings('mine.json', '\uFEFF{"version":1,"same-plants":false}').size).toBe(0);
  });

  it.each([
    ['settings-not-json', '{ "version": 1,'],
    ['settings-not-json', '[1]'],
    ['settings-not-json', 'null'],
    ['settings-version', '{}'],
    ['settings-version', '{ "version": 2 }'],
    ['settings-value', '{ "version": 1, "map": "Mutter=seed_parent" }'],
    ['settings-value', '{ "version": 1, "map": [1] }'],
    ['settings-value', '{ "version": 1, "same-plants": "yes" }'],
    ['settings-value', '{ "version": 1, "worth": null }'],
    ['settings-key-unknown', '{ "version": 1, "as-of": "2026-01-01" }'],
    ['settings-key-unknown', '{ "version": 1, "__proto__": 1 }'],
  ])('fails with %s for %s', (code, text) => {
    expect(failureOf(text).code).toBe(code);
  });

  it('names the key that is likely meant', () => {
    expect(failureOf('{ "version": 1, "date-oder": "dmy" }').details).toEqual({
      file: 'mine.json',
      key: 'date-oder',
      nearest: 'date-order',
    });
  });
});

describe('overSettings', () => {
  it('lets the command line win, and joins its lists', () => {
    const settings = valuesFrom('--level', '0.9', '--worth', '0.2', '--map', 'a=vial');
    const joined = overSettings(settings, valuesFrom('--level', '0.8', '--map', 'b=note', '--map', 'a=vial'));
    expect([...joined]).toEqual([
      ['level', ['0.8']],
      ['worth', ['0.2']],
      ['map', ['a=vial', 'b=note']],
    ]);
  });
});
