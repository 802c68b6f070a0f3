import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { analyse } from '../../lib/analyse.ts';
import { openPaper } from '../../lib/charts/paper.ts';
import { plainPaper } from '../../lib/charts/plain-paper.ts';
import { renderPage } from '../../lib/notebook/page.ts';
import { type CompiledNotebook, runNotebook } from '../../lib/notebook/run.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import type { Season } from '../../lib/season/season.ts';
import { flowersOf, seasonOf } from '../season-of.ts';

const folder = fileURLToPath(new URL('../../data-demo', import.meta.url));
const demo = () =>
  readSeason(
    ['crosses.csv', 'vials.csv', 'flowers.csv'].map((name) => ({
      name,
      bytes: new Uint8Array(readFileSync(join(folder, name))),
    })),
  );

// linkedom, a document of the whole standard, is the second voice.
describe('plainPaper', () => {
  let notebook: CompiledNotebook;
  let paper: Document;
  beforeAll(async () => {
    const review = 'fruitodds/reports/season-review.js';
    notebook = ((await import(review)) as { notebook: CompiledNotebook }).notebook;
    paper = await openPaper();
  });

  const seasons: readonly (readonly [string, () => Season])[] = [
    ['the demo', demo],
    [
      'names that look like markup',
      () =>
        seasonOf([
          ...flowersOf(3, 4, { storage: 'fresh', seedParent: '<b>&"', pollenParent: '</text>' }),
          ...flowersOf(1, 4, {
            storage: 'frozen',
            ageDays: 30,
            seedParent: '<b>&"',
            pollenParent: '__proto__',
          }),
        ]),
    ],
  ];
  it.each(seasons)('gives the drawings that a whole document gives: %s', async (_name, season) => {
    const read = season();
    const filled = await runNotebook(notebook, { season: read, analysis: analyse(read) });
    const drawn = renderPage(filled, plainPaper());
    expect(drawn).toContain('<svg');
    expect(drawn).toBe(renderPage(filled, paper));
  });

  it('says what it cannot do', () => {
    const element = plainPaper().createElementNS('http://www.w3.org/2000/svg', 'g');
    expect(() => element.querySelectorAll('text')).toThrow('only [id] can be looked for');
  });
});
