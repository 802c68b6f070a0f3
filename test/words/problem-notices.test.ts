import { describe, expect, it } from 'vitest';
import { readSeason } from '../../lib/season/read-season.ts';
import { noticeLines } from '../../lib/words/problem-notices.ts';

function lines(text: string): string[] {
  const [file] = readSeason([{ name: 'x.csv', bytes: new TextEncoder().encode(text) }]).files;
  return noticeLines(file.problems.filter(({ severity }) => severity === 'notice'));
}

describe('noticeLines', () => {
  it('tell all columns in one line and all words in another, whatever their case', () => {
    const text = [
      'Tag,Date,Mother,pollen_parent,storage,outcome,moon,weather',
      '1,2025-06-20,A,B,Fresh,Yes,full,dry',
      '2,2025-06-20,A,B,fresh,yes,full,dry',
      '3,2025-06-20,A,B,fresh pollen,YES,full,dry',
      '4,2025-06-20,A,B,FRESH POLLEN,no,full,dry',
    ].join('\n');
    expect(lines(text)).toEqual([
      'Columns read as ours: "Tag" as cross_id, "Date" as pollination_date, "Mother" as seed_parent. If one is wrong, ' +
        'rename it, or say what it is: --map "THEIR HEADER=column".',
      'Columns not used: "moon", "weather". If one holds something that is needed, say what: --map "THEIR HEADER=column".',
      'Words read as ours, wherever they stand: in "outcome", "Yes" as fruit, "no" as none; in "storage", ' +
        '"fresh pollen" as fresh.',
    ]);
  });

  it('say the same advice once for several columns of dates', () => {
    const text = [
      'cross_id,pollination_date,seed_parent,pollen_parent,storage,outcome,checked_on',
      '1,25/06/2025,A,B,fresh,fruit,25/07/2025',
    ].join('\n');
    const [dates, ...others] = lines(text);
    expect(others).toEqual([]);
    expect(dates).toMatch(/"pollination_date" are read.*"checked_on" are read/);
    expect(dates!.match(/--date-order/g)).toHaveLength(1);
  });
});
