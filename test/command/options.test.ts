import { describe, expect, it } from 'vitest';
import { Failure } from '../../lib/command/failure.ts';
import { readCommandLine } from '../../lib/command/options.ts';

function failureOf(...argv: string[]): { code: string; details: Failure['details'] } {
  try {
    readCommandLine(argv);
  } catch (error) {
    if (error instanceof Failure) return { code: error.code, details: error.details };
    throw error;
  }
  throw new Error(`expected a failure of: ${argv.join(' ')}`);
}

// The options are the contract's, section 2.
describe('readCommandLine', () => {
  it('reads every option of the contract', () => {
    const argv =
      'report a.csv b.csv --vials v.csv --flowers f.csv --json --use-on 2026-08-01 --as-of 2025-09-30 --date-order dmy --date-system 1904 ' +
      '--level 0.9 --endpoint final --age-scale days --worth 0.2 --same-plants --language en -o out.html';
    expect(
      readCommandLine([
        ...argv.split(' '),
        '--map',
        'Mutter = seed_parent',
        '--map',
        'a=b=vial',
        '--same',
        'A = a',
        '--same',
        'B=b=β',
      ]),
    ).toEqual({
      command: 'report',
      files: ['a.csv', 'b.csv'],
      vials: ['v.csv'],
      flowers: ['f.csv'],
      json: true,
      useOn: '2026-08-01',
      asOf: '2025-09-30',
      dateOrder: 'dmy',
      dateSystem: 1904,
      level: 0.9,
      endpoint: 'final',
      ageScale: 'days',
      worth: 0.2,
      samePlants: true,
      output: 'out.html',
      map: [
        { header: 'Mutter', column: 'seed_parent' },
        { header: 'a=b', column: 'vial' },
      ],
      storage: [],
      same: [
        ['A', 'a'],
        ['B', 'b', 'β'],
      ],
    });
  });

  it('reads the language of a template, which needs no file', () => {
    expect(readCommandLine(['template', '--language', 'de', '-o', 'new'])).toMatchObject({
      ...{ command: 'template', files: [], output: 'new', language: 'de' },
    });
    expect(readCommandLine(['template', '--language', 'en'])).not.toHaveProperty('language');
    expect(failureOf('clean', 'a.csv').code).toBe('output-missing');
  });

  it('leaves out what is not given, with a level of 0.95 and the initial fruit set', () => {
    expect(readCommandLine(['check', '-'])).toEqual({
      command: 'check',
      files: ['-'],
      vials: [],
      flowers: [],
      json: false,
      map: [],
      same: [],
      storage: [],
      level: 0.95,
      endpoint: 'initial',
    });
  });

  it('reads wishes for the plan, as often as they are given', () => {
    const argv = ['analyse', 'a.csv', '--must', 'A x B=2', '--must', 'A × C', '--at-most', 'B=5'];
    expect(readCommandLine(argv)).toMatchObject({
      must: [
        { names: 'A x B', flowers: 2 },
        { names: 'A × C', flowers: 1 },
      ],
      atMost: [{ names: 'B', flowers: 5 }],
    });
    expect(failureOf('analyse', 'a.csv', '--at-most', 'B')).toMatchObject({ code: 'option-value' });
  });

  it('reads what follows -- as files, however they are called', () => {
    expect(readCommandLine(['check', '--', '--odd.csv'])).toMatchObject({ files: ['--odd.csv'] });
  });

  it('answers help and version whatever else stands there', () => {
    expect(readCommandLine(['--help'])).toBe('help');
    expect(readCommandLine(['report', '-h'])).toBe('help');
    expect(readCommandLine(['help'])).toBe('help');
    expect(readCommandLine(['--version'])).toBe('version');
  });

  it('names the nearest option and command', () => {
    expect(failureOf('check', 'a.csv', '--levle', '0.9')).toEqual({
      code: 'option-unknown',
      details: { option: '--levle', nearest: '--level' },
    });
    expect(failureOf('check', 'a.csv', '-x')).toMatchObject({ code: 'option-unknown' });
    expect(failureOf('analyze', 'a.csv')).toEqual({
      code: 'command-unknown',
      details: { command: 'analyze', nearest: 'analyse' },
    });
  });

  it('takes no file for a template, and names the languages where one is not known', () => {
    expect(failureOf('template', 'a.csv')).toMatchObject({ code: 'file-not-expected' });
    expect(readCommandLine(['check', 'a.csv', '--language', 'de'])).toMatchObject({ language: 'de' });
    const { code, details } = failureOf('check', 'a.csv', '--language', 'xx');
    expect([code, details.rule]).toEqual(['option-value', 'one-of']);
    expect(details.allowed).toMatch(/^en, de/);
  });

  it('reads the level of a coded copy after = or a space, codes where it is bare', () => {
    const level = (...options: string[]) => readCommandLine(['analyse', ...options]);
    expect(level('--anonymous', 'a.csv')).toMatchObject({ anonymous: 'codes', files: ['a.csv'] });
    expect(level('a.csv', '--anonymous=summary', '--key', 'k.json')).toMatchObject({
      anonymous: 'summary',
      key: 'k.json',
    });
    expect(level('a.csv', '--anonymous', 'summary')).toMatchObject({
      anonymous: 'summary',
      files: ['a.csv'],
    });
    expect(level('a.csv', '--anonymous', 'codes', 'b.csv')).toMatchObject({
      anonymous: 'codes',
      files: ['a.csv', 'b.csv'],
    });
    expect(failureOf('analyse', 'a.csv', '--anonymous=all').code).toBe('option-value');
    expect(failureOf('analyse', 'a.csv', '--key', 'k.json').code).toBe('key-without-anonymous');
  });

  it.each([
    ['option-not-for-command', ['--anonymous']],
    ['option-value', ['--language', 'tlh']],
    ['option-value', ['--level', '95']],
    ['option-value', ['--level', '0']],
    ['option-value', ['--level', 'high']],
    ['option-value', ['--worth', '1']],
    ['option-value', ['--worth', '20%']],
    ['option-value', ['--use-on', '2025-02-30']],
    ['option-value', ['--as-of', '30.9.2025']],
    ['option-value', ['--date-order', 'dym']],
    ['option-value', ['--endpoint', 'last']],
    ['option-value', ['--age-scale', 'log']],
    ['option-value', ['--map', 'Mutter']],
    ['option-value', ['--map', '=vial']],
    ['option-value', ['--map', 'Mutter=mother_plant']],
    ['option-needs-value', ['--level']],
    ['option-needs-value', ['--level', '--json']],
    ['option-needs-value', ['--vials=']],
    ['option-takes-no-value', ['--json=yes']],
    ['option-twice', ['--level', '0.9', '--level', '0.8']],
    ['option-not-for-command', ['-o', 'out.html']],
  ])('fails with %s for %j', (code, options) => {
    expect(failureOf('check', 'a.csv', ...options).code).toBe(code);
  });

  it('needs a command, a file, and for the report a place to write to', () => {
    expect(failureOf().code).toBe('command-missing');
    expect(failureOf('check').code).toBe('file-missing');
    expect(failureOf('report', 'a.csv').code).toBe('output-missing');
    expect(failureOf('site', 'a.csv')).toEqual({ code: 'output-missing', details: { command: 'site' } });
    expect(failureOf('report', 'a.csv', '-o', '-').code).toBe('option-value');
  });
});
