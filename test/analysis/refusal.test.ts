import { describe, expect, it } from 'vitest';
import { uncountable, unusable } from '../../lib/analysis/refusal.ts';
import { readSeason } from '../../lib/season/read-season.ts';
import type { Season } from '../../lib/season/season.ts';

const HEAD = 'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome';
const VIALS = 'vial,pollen_parent,collected,storage\nF-01,Salt Moon,2024-07-17,frozen';

function read(...texts: readonly string[]): Season {
  return readSeason(
    texts.map((text, i) => ({ name: `${i + 1}.csv`, bytes: new TextEncoder().encode(text) })),
  );
}

// Expected codes: what the command answers with exit status 2 (the list of its failures in the README).
describe('unusable', () => {
  it('is nothing where a row could be read, of whatever kind', () => {
    expect(unusable(read(`${HEAD}\nT1,2025-06-01,A,B,fresh,fruit`))).toBeNull();
    expect(unusable(read(VIALS))).toBeNull();
  });

  it('is the open question, before all else', () => {
    const refusal = unusable(read(VIALS, `${HEAD}\nT1,03/04/2025,A,B,fresh,fruit`));
    expect(refusal?.code).toBe('question-open');
    expect(refusal?.fault?.code).toBe('date-order-unclear');
    expect(refusal?.fault?.file).toBe('2.csv');
  });

  it('is the first error where no file gives a row', () => {
    expect(unusable(read(''))).toEqual({
      code: 'no-usable-row',
      fault: expect.objectContaining({ code: 'file-empty' }),
    });
  });
});

describe('uncountable', () => {
  it('is nothing where one flower has a known outcome', () => {
    expect(
      uncountable(read(`${HEAD}\nT1,2025-06-01,A,B,fresh,unknown\nT2,2025-06-01,A,B,fresh,none`)),
    ).toBeNull();
  });

  it('asks for a crosses file where there is none', () => {
    expect(uncountable(read(VIALS))).toEqual({ code: 'no-crosses', fault: null });
  });

  it('names the fault of the crosses, not that of another file', () => {
    const refusal = uncountable(read(`${VIALS}\nF-02,,2024-07-17,frozen`, `${HEAD}\nT1,,A,B,fresh,fruit`));
    expect(refusal?.code).toBe('no-usable-row');
    expect(refusal?.fault?.file).toBe('2.csv');
  });

  it('says so where all outcomes are still open', () => {
    expect(uncountable(read(`${HEAD}\nT1,2025-06-01,A,B,fresh,unknown`))).toEqual({
      code: 'no-usable-outcome',
      fault: null,
    });
  });
});
