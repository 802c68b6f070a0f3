import { readFileSync } from 'node:fs';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { pageOf } from './page-of.ts';
import { readSections } from './page-reader.ts';

const HEADER =
  'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome,harvested_on,bagged,seeds';
const demo = readFileSync(new URL('../../data-demo/crosses.csv', import.meta.url));

describe('the page of the seed list', () => {
  it('lists the crosses of the demo season, the seed parent first, with what a sender must know', async () => {
    const [seed, sending] = readSections(await pageOf('seed-list', demo));
    expect(seed!.sentences[0]).toMatch(/^\d+ crosses have given \d+ ripe fruits; \d+ of \d+ had their seeds/);
    const rows = seed!.tables.flatMap((table) => table.rows);
    // Added up by hand from the four rows of data-demo/crosses.csv that grep finds for this cross, season and `fruit`.
    const row = rows.find(([cross, season]) => cross === 'Nightjar 3 × Salt Moon' && season === '2023')!;
    expect(row.slice(2, 5)).toEqual(['4', '781', '731']);
    expect(row[5]).toMatch(/^36 of 50 \(about/);
    // One folded list a seed parent, and no column of notes where there is no note.
    expect(
      seed!.tables.map((table) => new Set(table.rows.map(([cross]) => cross!.split(' × ')[0])).size),
    ).toEqual(seed!.tables.map(() => 1));
    expect(seed!.folded.filter(Boolean).length).toBeGreaterThanOrEqual(seed!.tables.length);
    expect(seed!.tables.flatMap((table) => table.columns)).not.toContain('note');
    const said = sending!.sentences.join(' ');
    for (const word of [
      'phytosanitary',
      'CITES',
      'controlled by law',
      'plant-health authority',
      'as labelled',
    ])
      expect(said).toContain(word);
  });

  it('says that there is no seed where no fruit came ripe, and that nothing was counted where it was not', async () => {
    const none = readSections(await pageOf('seed-list', `${HEADER}\n1,2025-06-01,A,B,fresh,none,,yes,\n`));
    expect(none[0]!.sentences[0]).toBe(
      'No ripe fruit of a cross is written down, so there is no seed to offer.',
    );
    expect(none[0]!.tables).toEqual([]);
    const uncounted = readSections(
      await pageOf('seed-list', `${HEADER}\n1,2025-06-01,A,B,fresh,fruit,,yes,\n`),
    );
    expect(uncounted[0]!.tables[0]!.rows).toEqual([
      ['A × B', '2025', '1', 'not counted', 'not known', 'not counted'],
    ]);
    expect(uncounted[0]!.sentences.join(' ')).toContain('No harvest date is written down');
  });

  it('runs nothing that a plant is called', async () => {
    const name = '"<img src=x onerror=alert(1)>"';
    const { document } = parseHTML(
      await pageOf('seed-list', `${HEADER}\n1,2025-06-01,${name},__proto__,fresh,fruit,2025-08-01,yes,12\n`),
    );
    expect(document.querySelectorAll('img, script, [onerror]')).toHaveLength(0);
    expect(document.querySelector('tbody th')!.textContent).toContain(
      '<img src=x onerror=alert(1)> × __proto__',
    );
  });
});
