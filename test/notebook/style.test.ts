import { describe, expect, it } from 'vitest';
import { dark, light } from '../../lib/charts/palette.ts';
import { pageStyle } from '../../lib/notebook/style.ts';

describe('pageStyle', () => {
  it('takes every colour from the palette, which is tested for contrast; white is for paper only', () => {
    const known = new Set([...Object.values(light), ...Object.values(dark), '#fff', '#ffffff']);
    const found = pageStyle.match(/#[0-9a-f]{3,8}\b/gi) ?? [];
    expect(found.length).toBeGreaterThan(10);
    expect(found.filter((colour) => !known.has(colour))).toEqual([]);
  });

  it('uses only variables that the palette defines', () => {
    const used = new Set([...pageStyle.matchAll(/var\(--([a-z]+)\)/g)].map(([, name]) => name));
    expect([...used].filter((name) => !(name! in light))).toEqual([]);
  });

  it('asks nothing of the network', () => {
    expect(pageStyle).not.toMatch(/url\(|@import|@font-face|https?:/);
  });

  it('closes every brace, so that no rule swallows the next', () => {
    expect(pageStyle.split('{').length).toBe(pageStyle.split('}').length);
    expect(pageStyle).not.toContain('<');
  });
});
