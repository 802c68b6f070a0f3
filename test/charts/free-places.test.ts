import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Box, freePlaces } from '../../lib/charts/free-places.ts';

const sheet: Box = { left: 0, right: 100, top: 0, bottom: 100 };
const box = (left: number, top: number, size = 10): Box => ({
  left,
  right: left + size,
  top,
  bottom: top + size,
});

describe('freePlaces', () => {
  it('takes the first place that is free', () => {
    const wishes = [
      { places: [{ box: box(0, 0), label: 'a' }] },
      {
        places: [
          { box: box(5, 5), label: 'b over a' },
          { box: box(20, 0), label: 'b' },
        ],
      },
    ];
    expect(freePlaces(wishes, [], sheet)).toEqual(['a', 'b']);
  });

  it('lets edges touch', () => {
    const wishes = [
      { places: [{ box: box(0, 0), label: 'a' }] },
      { places: [{ box: box(10, 0), label: 'b' }] },
    ];
    expect(freePlaces(wishes, [], sheet)).toEqual(['a', 'b']);
  });

  it('leaves out what would cover an obstacle or leave the sheet', () => {
    const wishes = [
      { places: [{ box: box(95, 0), label: 'outside' }] },
      { places: [{ box: box(40, 40), label: 'on the obstacle' }] },
    ];
    expect(freePlaces(wishes, [box(45, 45)], sheet)).toEqual([]);
  });

  it('never lets two labels overlap', () => {
    const place = fc.record({ left: fc.integer({ min: 0, max: 90 }), top: fc.integer({ min: 0, max: 90 }) });
    fc.assert(
      fc.property(fc.array(fc.array(place, { maxLength: 4 }), { maxLength: 20 }), (all) => {
        const wishes = all.map((places) => ({
          places: places.map(({ left, top }) => ({ box: box(left, top), label: box(left, top) })),
        }));
        const kept = freePlaces(wishes, [], sheet);
        const clashes = kept.flatMap((a, index) =>
          kept.slice(index + 1).filter((b) => Math.abs(a.left - b.left) < 10 && Math.abs(a.top - b.top) < 10),
        );
        expect(clashes).toEqual([]);
      }),
    );
  });
});
