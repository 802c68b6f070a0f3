import { expect, it } from 'vitest';
import { VERSION } from '../../lib/version.ts';
import { run } from './memory-world.ts';

// The commands and options are the contract's, section 2.
it('names every command and option of this version, and none that is not available', async () => {
  const { status, out, err } = await run(['--help']);
  expect([status, err]).toEqual([0, '']);
  for (const word of [
    ...[
      'check',
      'analyse',
      'report',
      'clean',
      'template',
      '--csv',
      'site',
      '--vials',
      '--flowers',
      '--json',
      '--use-on',
      '--as-of',
      '--date-order',
    ],
    ...[
      '--map',
      '--level',
      '--endpoint',
      '--age-scale',
      '--worth',
      '--same-plants',
      'sheet',
      '--mix',
      '--must',
      '--at-most',
      '--anonymous[=LEVEL]',
      '--key',
      '--language',
      '-o',
      '--help',
      '--version',
    ],
  ]) {
    expect(out).toContain(word);
  }
  expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(110);
});

it('prints its version', async () => {
  expect((await run(['--version'])).out).toBe(`${VERSION}\n`);
});
