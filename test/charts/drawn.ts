/** Reads a drawing's markup the way a page would, for the tests. */
import { parseHTML } from 'linkedom';
import { expect } from 'vitest';
import { textWidth } from '../../lib/charts/names.ts';
import { SHEET_WIDTH, TEXT_SIZE } from '../../lib/charts/sheet.ts';

export function parsed(svg: string): Element {
  const root = parseHTML(`<!doctype html><html><body>${svg}</body></html>`).document.querySelector('svg');
  if (root === null) throw new TypeError('parsed: svg must hold an svg element');
  return root;
}

/** Every line of text in a drawing. */
export function texts(svg: string): string[] {
  return Array.from(parsed(svg).querySelectorAll('text'), (node) => node.textContent ?? '');
}

function translation(node: Element): number {
  return Number(/translate\((-?[\d.]+)/.exec(node.getAttribute('transform') ?? '')?.[1] ?? 0);
}

/** Left and right end of a text, by widths of a wide face. */
function extent(node: Element): readonly [number, number] {
  const parent = node.parentElement as Element;
  const anchor = parent.getAttribute('text-anchor') ?? 'middle';
  const size = parent.getAttribute('font-weight') === 'bold' ? TEXT_SIZE * 1.12 : TEXT_SIZE;
  const wide = textWidth(node.textContent ?? '', size);
  const x = translation(node) + translation(parent);
  const left = anchor === 'start' ? x : anchor === 'end' ? x - wide : x - wide / 2;
  return [left, left + wide];
}

/** What holds for every drawing: safe in a page with a strict policy, readable on a phone, small. */
export function expectFitForPage(svg: string): void {
  expect(svg).not.toMatch(
    /<style|<script|\sstyle=|\son\w+=|#[0-9a-f]{3,6}["']|rgb\(|NaN|undefined|Infinity/i,
  );
  expect(svg).not.toMatch(/\.\d\d/);
  expect(svg.length).toBeLessThanOrEqual(12_000);
  for (const node of parsed(svg).querySelectorAll('text')) {
    const [left, right] = extent(node);
    expect([node.textContent, left >= 0, right <= SHEET_WIDTH]).toEqual([node.textContent, true, true]);
  }
}
