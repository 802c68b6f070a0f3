import { describe, expect, it } from 'vitest';
import { priorRecords } from '../../lib/analysis/grower-model.ts';
import { GROWER_PRIORS } from '../../lib/analysis/priors.ts';
import { LANGUAGES, wordsIn } from '../../lib/words/languages.ts';
import { priorRows } from '../../lib/words/priors.ts';

/* What is said of each prior, beside the record of it: by this project. */

const records = priorRecords(GROWER_PRIORS, ['frozen', 'silica']);

describe('the table of priors', () => {
  const rows = priorRows(records);

  it('says what each prior is about, its kind, its centre and how wide it is', () => {
    expect(rows[0]).toEqual(['fresh pollen, average pair', 'normal', '0.3', '1.2']);
    expect(rows[2]).toEqual(['frozen pollen, after 365 days', 'normal, below 0', '−1.0', '1.0']);
    expect(rows[5]![0]).toBe('pollen stored as “silica” at age 0, against fresh');
    expect(rows.at(-1)).toEqual(['share of incompatible pairs', 'logit-normal', '−2.6', '0.8']);
  });

  it('names each effect as people do', () => {
    const effects = rows.map(([about]) => about!).filter((about) => about.startsWith('standard deviation'));
    expect(effects).toHaveLength(Object.keys(GROWER_PRIORS.sds).length);
    expect(effects.filter((about) => /[A-Z]/.test(about))).toEqual([]);
  });

  it.each(LANGUAGES.filter((language) => language !== 'en'))('is all in %s', async (language) => {
    const own = (await wordsIn(language)).priorRows(records);
    expect(new Set(own.map(([about]) => about)).size).toBe(records.length);
    expect(own.filter(([about], row) => about === rows[row]![0])).toEqual([]);
    expect(own.flatMap(([about]) => about!.match(/seedParent|pollenParent|morning|grower/g) ?? [])).toEqual(
      [],
    );
    expect(own.map(([, , centre]) => centre)).toEqual(rows.map(([, , centre]) => centre!.replace('.', ',')));
  });
});
