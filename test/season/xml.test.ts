import { describe, expect, it } from 'vitest';
import { walkXml } from '../../lib/season/xml.ts';

function walked(xml: string): string[] {
  const events: string[] = [];
  walkXml(xml, {
    open: (name, attribute) => events.push(`<${name} ${attribute('id') ?? ''}`),
    close: (name) => events.push(`>${name}`),
    text: (text) => events.push(text),
  });
  return events;
}

describe('walkXml', () => {
  it('tells tags and attributes without prefixes, and text with its entities resolved', () => {
    expect(walked('<x:a r:id="1&amp;2">B &lt; &#233;<c/><![CDATA[<d>]]></x:a>')).toEqual([
      '<a 1&2',
      'B < é',
      '<c ',
      '>c',
      '<d>',
      '>a',
    ]);
  });

  it('resolves no entity that the text declares itself', () => {
    const bomb = '<!DOCTYPE a [<!ENTITY x "ha"><!ENTITY y "&x;&x;&x;">]><a>&y;</a>';
    expect(walked(bomb).join('')).not.toContain('ha');
  });

  it.each(['<a><b></a>', '<a', '<a></a></b>'])('refuses %s', (xml) => {
    expect(() => walked(xml)).toThrow();
  });
});
