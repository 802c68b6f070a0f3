import { describe, expect, it } from 'vitest';
import { speltOut, withoutMarks } from '../../lib/season/umlauts.ts';

// Spelling of umlauts without a keyboard that has them: DIN 5007-2 and common practice.
describe('letters that a keyboard may lack', () => {
  it('are spelt out', () => {
    expect(['Königin', 'STRAẞE', 'Åsa', 'Ko\u0308nig', 'Señora', 'plain'].map(speltOut)).toEqual([
      'koenigin',
      'strasse',
      'aasa',
      'koenig',
      'señora',
      'plain',
    ]);
  });

  it('lose their marks', () => {
    expect(['Königin', 'Señora', 'Cœur', 'Łódź', 'Øl', 'Straße'].map(withoutMarks)).toEqual([
      'konigin',
      'senora',
      'coeur',
      'lodz',
      'ol',
      'strasse',
    ]);
  });
});
