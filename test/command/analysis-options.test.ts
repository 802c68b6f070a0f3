import { expect, it } from 'vitest';
import { optionsOf } from '../../lib/command/analysis-options.ts';
import { readCommandLine } from '../../lib/command/options.ts';
import { seasonOf } from '../season-of.ts';

it('passes on what the command line gives and leaves defaults to the library', () => {
  const line = (...options: string[]) => {
    const read = readCommandLine(['analyse', 'a.csv', ...options]);
    if (typeof read === 'string') throw new Error(read);
    return optionsOf(read, seasonOf([{}]));
  };
  expect(line()).toEqual({ level: 0.95 });
  expect(line('--use-on', '2026-08-01', '--worth', '0.2', '--age-scale', 'days', '--same-plants')).toEqual({
    level: 0.95,
    useOn: '2026-08-01',
    worth: 0.2,
    ageScale: 'days',
    samePlants: true,
  });
});
