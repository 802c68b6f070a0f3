import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { escapeHtml } from '../../lib/notebook/html.ts';
import { findLeaks } from '../../lib/notebook/leaks.ts';

const OWN = 'Early pollen fades. Wilson’s range. fresh frozen 12 seedParent';
const secret = (value: string) => ({ what: 'the plant', value });
const leaks = (name: string, text: string, ...values: string[]) =>
  findLeaks([{ name, text }], values.map(secret), OWN).map(({ value, place }) => `${value} at ${place}`);

describe('findLeaks', () => {
  it.each([
    ['text', 'a.html', '<p>one</p>\n<p>The Salt Moon took.</p>', 'Salt Moon at line 2'],
    ['another case', 'a.html', '<p>SALT moon</p>', 'Salt Moon at line 1'],
    ['other spaces', 'a.html', '<p>Salt\u00A0\n Moon</p>', 'Salt Moon at line 1'],
    ['two elements of a chart', 'a.svg', '<text>Salt</text><text>Moon</text>', 'Salt Moon at line 1'],
    [
      'an attribute',
      'a.html',
      '<svg aria-label="of Salt Moon"></svg>',
      'Salt Moon at an attribute of line 1',
    ],
    ['a comment', 'a.html', '<!-- Salt Moon -->', 'Salt Moon at a comment of line 1'],
    ['a string of JSON', 'a.json', '{"a":["x","Salt Moon × y"]}', 'Salt Moon at a[1]'],
    ['a key of JSON', 'a.vl.json', '{"Salt Moon":1}', 'Salt Moon at a key of the top'],
    ['a cell', 'a.csv', 'x,y\r\n1,Salt Moon\r\n', 'Salt Moon at a cell of line 2'],
    ['a file’s name', 'salt-moon.html', '', 'salt-moon at its own name'],
  ])('finds a name in %s', (_, name, text, found) => {
    expect(leaks(name, text, 'Salt Moon', 'salt-moon')).toContain(found);
  });

  it('finds whole words only', () => {
    expect(leaks('a.html', '<p>Anna, Saltmoon, Salt Moons, reddish</p>', 'Ann', 'Salt Moon', 'red')).toEqual(
      [],
    );
    expect(leaks('a.html', '<p>Ann, red.</p>', 'Ann', 'red')).toEqual(['Ann at line 1', 'red at line 1']);
  });

  it('cannot tell short names, numbers and words of its own from a page, but from a cell', () => {
    const values = ['A', '7', 'Early', 'Wilson', 'fresh'];
    expect(leaks('a.html', '<p>A flower of 7, Early, by Wilson, fresh</p>', ...values)).toEqual([]);
    expect(leaks('a.json', '{"seedParent":"A","flowers":7}', ...values)).toEqual(['A at seedParent']);
    expect(leaks('a.json', '{"seedParent":"7"}', ...values)).toEqual(['7 at seedParent']);
    expect(leaks('a.csv', 'x\r\n7\r\n', ...values)).toEqual(['7 at a cell of line 2']);
    expect(leaks('a.csv', 'x\r\nfresh\r\n', ...values)).toEqual([]);
  });

  it('finds dates and hashes', () => {
    const hash = 'ab12'.repeat(16);
    expect(leaks('a.html', `<p>2025-06-20</p><p>${hash}</p>`, '2025-06-20', hash)).toHaveLength(2);
    expect(leaks('a.html', '<p>12025-06-201</p>', '2025-06-20')).toEqual([]);
  });

  it('finds any name that stands in a page as the page would write it', () => {
    const name = fc
      .string({ unit: 'grapheme', minLength: 3, maxLength: 20 })
      .filter((text) => /\p{L}/u.test(text));
    const awkward = fc.constantFrom(
      '__proto__',
      '<script>x</script>',
      'שלום עולם',
      '🌵 cactus',
      'a.b*c',
      'Ärger',
    );
    fc.assert(
      fc.property(fc.oneof(name, awkward), (value) => {
        const known = findLeaks([{ name: 'own.txt', text: OWN }], [secret(value)], '').length > 0;
        const text = `<p>before ${escapeHtml(value)} after</p>`;
        const alone = [...value.trim()].length < 3;
        expect(leaks('a.html', text, value).length).toBe(known || alone ? 0 : 1);
      }),
    );
  });

  it('names each secret once a file', () => {
    expect(leaks('a.html', '<p>Salt Moon Salt Moon</p>', 'Salt Moon')).toHaveLength(1);
  });
});
