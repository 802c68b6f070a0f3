import { describe, expect, it } from 'vitest';
import {
  dateInOrder,
  fullYear,
  hasShortYear,
  isSerial,
  readDate,
  serialDate,
  threeNumbers,
} from '../../lib/season/date-cell.ts';

describe('days', () => {
  it('are the same in every time zone', () => {
    const before = process.env.TZ;
    const read = (zone: string) => {
      process.env.TZ = zone;
      return [
        ...['2025-06-14T00:30:00Z', '2025-06-14 23:59', '14.06.2025 00:00', '45822.99'].map((text) =>
          readDate(text, text.startsWith('4') ? 1900 : 'dmy'),
        ),
        serialDate(45822, 1900),
      ];
    };
    try {
      const far = read('Pacific/Kiritimati');
      expect(new Date(2025, 5, 14).toISOString()).toBe('2025-06-13T10:00:00.000Z');
      expect(far).toEqual([...Array(4).fill({ value: '2025-06-14' }), '2025-06-14']);
      expect(read('America/Los_Angeles')).toEqual(far);
    } finally {
      if (before === undefined) delete process.env.TZ;
      else process.env.TZ = before;
    }
  });
});

describe('readDate', () => {
  it.each([
    ['2025-06-14', null],
    ['2025-06-14 00:00:00', null],
    ['2025-06-14T23:59:00-11:00', null],
    ['2025/6/14', null],
    ['14 June 2025', null],
    ['14-Jun-25', null],
    ['June 14, 2025', null],
    ['14.6.2025', 'dmy'],
    ['14/06/25', 'dmy'],
    ['6/14/2025', 'mdy'],
    ['25-06-14', 'ymd'],
    ['14.06.2025 08:15', 'dmy'],
    ['14. Juni 2025', null],
    ['14. Juni 25', null],
    ['14 de junio de 2025', null],
    ['14 juin 2025', null],
    ['14th of June 2025', null],
    ['Sat 14 June 2025', null],
    ['Sa, 14. Juni 2025', null],
    ['le 14 juin 2025', null],
    ["14 Jun '25", null],
    ['2025 Jun 14', null],
    ['14jun2025', null],
    ['20250614', null],
    ['14/VI/2025', null],
    ['14. vi. 25', null],
    ['Sa, 14.6.2025', 'dmy'],
    ['sábado 14/06/2025', 'dmy'],
    ['14-jun-25 08:15', null],
    ['45822', 1900],
    ['45822.75', 1900],
    ['44360', 1904],
  ] as const)('reads %s (%s) as 14 June 2025', (text, order) => {
    expect(readDate(text, order)).toEqual({ value: '2025-06-14' });
  });

  it.each([
    ['2025-02-30', null, 'date-does-not-exist'],
    ['31 June 2025', null, 'date-does-not-exist'],
    ['14/06/2025', 'mdy', 'date-does-not-exist'],
    ['45822', null, 'date-serial'],
    ['June 2025', null, 'date-partial'],
    ['Juni 2025', null, 'date-partial'],
    ['mayo de 2025', null, 'date-partial'],
    ['may-25', null, 'date-partial'],
    ['14 June', null, 'date-partial'],
    ['14.6.', null, 'date-partial'],
    ['6/2025', null, 'date-partial'],
    ['2025', null, 'date-partial'],
    ['14 jui 2025', null, 'date-not-understood'],
    ['14 Brumaire 2025', null, 'date-not-understood'],
    ['2025-06', null, 'date-partial'],
    ['0205-06-14', null, 'date-implausible'],
    ['9999-12-31', null, 'date-implausible'],
  ] as const)('refuses %s (%s): %s', (text, order, fault) => {
    expect(readDate(text, order)).toEqual({ fault });
  });

  it('takes two digits for 1970 to 2069', () => {
    expect(['69', '70', '00', '1969'].map(fullYear)).toEqual([2069, 1970, 2000, 1969]);
  });

  it('never takes a number of four digits for a day or month', () => {
    expect(threeNumbers('03/04/2025')).toEqual(['03', '04', '2025']);
    expect(dateInOrder(['03', '04', '2025'], 'ymd')).toBeNull();
    expect(threeNumbers('2025-04-03')).toBeNull();
  });
});

describe('serialDate', () => {
  // ECMA-376 part 1, 18.17.4.1: the 1900 system counts 1900-01-01 as 1 (and a 29 February 1900), the 1904 system
  // 1904-01-01 as 0; 2008-02-05 is 39483 there (from memory); the two differ by 1462 days.
  it('counts as a spreadsheet does', () => {
    expect(serialDate(39_483, 1900)).toBe('2008-02-05');
    expect(serialDate(39_483 - 1462, 1904)).toBe('2008-02-05');
    expect(serialDate(45_809.99, 1900)).toBe('2025-06-01');
  });

  it('knows its numbers from others', () => {
    expect(['45809', '45809.5', '45809,5', '4580', '99999', '458091'].map(isSerial)).toEqual([
      true,
      true,
      true,
      false,
      false,
      false,
    ]);
  });
});

describe('hasShortYear', () => {
  it('sees two digits behind numbers and behind names', () => {
    expect(['03.04.25', '3 May 25', '03.04.2025', '3 May 2025', '2025-04-03', ''].map(hasShortYear)).toEqual([
      true,
      true,
      false,
      false,
      false,
      false,
    ]);
  });
});
