import { expect, it } from 'vitest';
import { settingsText } from '../../lib/browser/saved-settings.ts';
import { readSettings } from '../../lib/command/settings.ts';

const read = { endpoint: 'final', dateOrder: 'dmy', map: [['Zorn = x', 'outcome']] } as const;

// The command's own reader is the check: it refuses what it does not know.
it('is read by the command as what was answered here', () => {
  const analyse = { level: 0.95, worth: 0.333, useOn: '2026-06-01', samePlants: true };
  const values = readSettings('settings.json', settingsText({ sources: [], read, analyse }));
  expect([...values]).toEqual([
    ['date-order', ['dmy']],
    ['map', ['Zorn = x=outcome']],
    ['same-plants', ['']],
    ['endpoint', ['final']],
    ['worth', ['0.333']],
    ['use-on', ['2026-06-01']],
  ]);
});

it('leaves out what was left to the defaults', () => {
  const task = { sources: [], read: { endpoint: 'initial', map: [] }, analyse: { level: 0.95 } } as const;
  expect([...readSettings('settings.json', settingsText(task)).keys()]).toEqual(['endpoint']);
});
