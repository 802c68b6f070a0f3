import { describe, expect, it } from 'vitest';
import { NO_SETTINGS } from '../../lib/browser/settings.ts';
import { flowerFields, listsMarkup, withListed, withoutListed } from '../../lib/browser/shown-settings.ts';
import { markupOf } from '../../lib/notebook/html.ts';

it('has a field for each plant, with what was typed before, names escaped', () => {
  const plants = ['A', '"><img src=x>'];
  const markup = markupOf(flowerFields(plants, { ...NO_SETTINGS, expected: new Map([['A', '7']]) }));
  expect(markup.match(/<input/g)).toHaveLength(2);
  expect(markup).toContain('value="7"');
  expect(markup).not.toContain('<img');
});

describe('the lists', () => {
  const reading = { names: ['A', '<b>'], plants: ['A (Ina)', '<b>'], unused: [], columns: ['vial'] };
  const chosen = (first: string, second: string, number = '') => ({ first, second, number });

  it('offer the plants of the files, told apart for wishes, and escape them', () => {
    const markup = listsMarkup(reading, NO_SETTINGS, false).map(markupOf).join('');
    expect(markup).not.toContain('<b>');
    expect(markup.match(/<option value="A">/g)).toHaveLength(2);
    expect(markup.match(/<option value="A \(Ina\)">/g)).toHaveLength(4);
    expect(markup).not.toContain('own-map-first');
    const one = listsMarkup({ ...reading, unused: ['days'] }, NO_SETTINGS, true)
      .map(markupOf)
      .join('');
    expect(one).toContain('<option value="days">');
    expect(one).not.toContain('A (Ina)');
  });

  it('take what is complete, and nothing else', () => {
    expect(withListed(NO_SETTINGS, 'same', chosen('A', 'a'))?.same).toEqual([['A', 'a']]);
    expect(withListed(NO_SETTINGS, 'map', chosen('days', 'vial'))?.map).toEqual([['days', 'vial']]);
    expect(withListed(NO_SETTINGS, 'must', chosen('A', 'B', '2'))?.must).toEqual([
      { names: 'A × B', flowers: 2 },
    ]);
    expect(withListed(NO_SETTINGS, 'atMost', chosen('B', '', '0'))?.atMost).toEqual([
      { names: 'B', flowers: 0 },
    ]);
    expect(withListed(NO_SETTINGS, 'atMost', chosen('B', 'A', '5'))?.atMost).toEqual([
      { names: 'A × B', flowers: 5 },
    ]);
    const incomplete = [
      withListed(NO_SETTINGS, 'same', chosen('A', 'A')),
      withListed(NO_SETTINGS, 'map', chosen('days', '')),
      withListed(NO_SETTINGS, 'must', chosen('A', 'B', '0')),
      withListed(NO_SETTINGS, 'must', chosen('A', '', '1')),
      withListed(NO_SETTINGS, 'atMost', chosen('B', '', 'few')),
    ];
    expect(incomplete).toEqual([null, null, null, null, null]);
  });

  it('lose the entry that is taken out', () => {
    const two = {
      ...NO_SETTINGS,
      same: [
        ['A', 'a'],
        ['B', 'b'],
      ],
    };
    expect(withoutListed(two, 'same', 0).same).toEqual([['B', 'b']]);
  });
});
