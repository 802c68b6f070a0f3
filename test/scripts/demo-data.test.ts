import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const script = fileURLToPath(new URL('../../scripts/demo-data.mjs', import.meta.url));
const committed = (name: string) => readFileSync(new URL(`../../data-demo/${name}`, import.meta.url), 'utf8');

describe('the demo data', () => {
  it('are what the seeded script writes, byte for byte', () => {
    const run = spawnSync(process.execPath, [script, '--check'], { encoding: 'utf8' });
    expect(run.stderr).toBe('');
    expect(run.status).toBe(0);
  });

  it('end their lines with LF only', () => {
    for (const name of ['crosses.csv', 'vials.csv', 'flowers.csv'])
      expect(committed(name)).not.toContain('\r');
  });

  // The model of the script's head, evaluated by it: freezing costs 10 to 15 points in truth.
  it('hold a true loss by freezing of 10 to 15 points', async () => {
    const { demoSeason } = (await import(script)) as { demoSeason: () => { trueLoss: number } };
    expect(demoSeason().trueLoss).toBeGreaterThan(0.1);
    expect(demoSeason().trueLoss).toBeLessThan(0.15);
  });

  // Counted by splitting the lines: no cell of the demo holds a comma.
  it('show a raw gap between fresh and frozen of about twice the true loss', async () => {
    const { demoSeason } = (await import(script)) as { demoSeason: () => { trueLoss: number } };
    const rows = committed('crosses.csv')
      .split('\n')
      .map((line) => line.split(','))
      .filter((cells) => cells[15] === '' && /^(fruit|dropped|none)$/.test(cells[8]!));
    const rate = (storage: string) => {
      const outcomes = rows.filter((cells) => cells[4] === storage).map((cells) => cells[8]);
      return outcomes.filter((outcome) => outcome !== 'none').length / outcomes.length;
    };
    const gap = rate('fresh') - rate('frozen');
    expect(gap / demoSeason().trueLoss).toBeGreaterThan(1.7);
    expect(gap / demoSeason().trueLoss).toBeLessThan(2.5);
  });
});
