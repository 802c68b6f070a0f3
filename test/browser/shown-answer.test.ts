import { expect, it } from 'vitest';
import { firstCounts } from '../../lib/browser/first-counts.ts';
import { NO_SETTINGS } from '../../lib/browser/settings.ts';
import { countsFigure, countsSaid, flowerFields } from '../../lib/browser/shown-answer.ts';
import { markupOf } from '../../lib/notebook/html.ts';
import { crossesFile, flowersOf, seasonOf } from '../season-of.ts';

const counts = firstCounts(
  seasonOf(
    [...flowersOf(3, 4, { storage: 'fresh' }), ...flowersOf(1, 4, { storage: 'frozen', ageDays: 30 })],
    { files: [crossesFile(8, 8)] },
  ),
);

it('gives the counts of the first three sections, and says what is still being worked out', () => {
  const said = markupOf(countsSaid(counts));
  expect(said).toContain('8 flowers, 1 pair. Frozen pollen 1 of 4, fresh 3 of 4.');
  expect(said).toContain('We used 8 of 8 rows: none is left out.');
  expect(said).toContain(
    'Frozen pollen took 1 of 4, fresh pollen 3 of 4: over all flowers about 5 fewer in every 10',
  );
  expect(said).toContain('still being worked out');
  expect(countsFigure(counts)?.table.rows).toHaveLength(2);
});

it('has a field for each plant, with what was typed before, names escaped', () => {
  const plants = ['A', '"><img src=x>'];
  const markup = markupOf(flowerFields(plants, { ...NO_SETTINGS, expected: new Map([['A', '7']]) }));
  expect(markup.match(/<input/g)).toHaveLength(2);
  expect(markup).toContain('value="7"');
  expect(markup).not.toContain('<img');
});
