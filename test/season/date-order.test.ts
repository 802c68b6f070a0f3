import { describe, expect, it } from 'vitest';
import { dateOrderOf } from '../../lib/season/date-order.ts';

const cells = (...texts: string[]) => texts.map((text, i) => ({ row: i + 2, text }));

describe('dateOrderOf', () => {
  it('is decided by a date that can be read in one way only', () => {
    expect(dateOrderOf(cells('03/04/2025', '25/04/2025'))).toEqual({
      state: 'decided',
      order: 'dmy',
      evidence: { row: 3, text: '25/04/2025' },
      rival: 'mdy',
      byYear: false,
    });
    expect(dateOrderOf(cells('04/25/2025', '03/04/2025'))).toMatchObject({
      order: 'mdy',
      evidence: { row: 2 },
    });
    expect(dateOrderOf(cells('25-06-14', '32-06-01'))).toMatchObject({
      state: 'decided',
      order: 'ymd',
    });
  });

  it('finds a year of two digits by its changing least, and asks for the rest', () => {
    expect(dateOrderOf(cells('14.06.25', '15.06.25', '16.06.25'))).toMatchObject({
      state: 'decided',
      order: 'dmy',
      evidence: { row: 2, text: '14.06.25' },
      rival: 'mdy',
      byYear: true,
    });
    expect(dateOrderOf(cells('25-06-14', '25-06-15', '25-06-16'))).toMatchObject({
      order: 'ymd',
      rival: null,
      byYear: true,
    });
    expect(dateOrderOf(cells('03.06.25', '04.06.25', '05.06.25'))).toMatchObject({
      state: 'unclear',
      orders: ['dmy', 'mdy'],
    });
    expect(dateOrderOf(cells('14.06.25', '15.06.25'))).toMatchObject({
      state: 'unclear',
      orders: ['dmy', 'ymd'],
    });
  });

  it('is not needed for ISO dates, month names and blanks', () => {
    expect(dateOrderOf(cells('2025-06-14', '14 June 2025', '', 'soon'))).toEqual({ state: 'not-needed' });
  });

  it('is unclear where each date can be read in two ways', () => {
    expect(dateOrderOf(cells('05/05/2025', '03/04/2025'))).toEqual({
      state: 'unclear',
      orders: ['dmy', 'mdy'],
      example: { row: 3, text: '03/04/2025' },
    });
    expect(dateOrderOf(cells('13.06.25'))).toMatchObject({ state: 'unclear', orders: ['dmy', 'ymd'] });
  });

  it('needs no evidence where both readings are the same day', () => {
    expect(dateOrderOf(cells('05/05/2025'))).toEqual({
      state: 'decided',
      order: 'dmy',
      evidence: null,
      rival: null,
      byYear: false,
    });
  });

  it('is mixed where two dates contradict each other, and names both', () => {
    expect(dateOrderOf(cells('25/04/2025', '04/26/2025'))).toEqual({
      state: 'mixed',
      orders: ['dmy', 'mdy'],
      against: [
        { row: 3, text: '04/26/2025' },
        { row: 2, text: '25/04/2025' },
      ],
    });
  });

  it('learns nothing from a date that does not exist in any order', () => {
    expect(dateOrderOf(cells('31/31/2025'))).toEqual({ state: 'not-needed' });
  });
});
