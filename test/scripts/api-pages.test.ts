import { beforeAll, describe, expect, it } from 'vitest';
import * as door from '../../lib/index.ts';
import { apiPages } from '../../scripts/api-pages.mjs';

let pages: readonly { readonly name: string; readonly text: string }[] = [];
beforeAll(async () => {
  // Null where an export has no comment, or a comment speaks of an argument that is not there.
  pages = (await apiPages()) ?? [];
}, 240_000);

describe('the pages of the library', () => {
  it('are one a public name, each function with its source and example', () => {
    const wanted = ['logistic', 'wilson', 'designColumns', 'standardise', 'betaQuantile'];
    const text = new Map(pages.map((page) => [page.name, page.text]));
    for (const name of wanted) {
      const page = text.get(`api/functions/${name}.html`) ?? '';
      for (const part of ['Parameters', 'Returns', 'Throws', 'Source', 'Example']) {
        if (part === 'Returns' || page.includes('Returns')) expect(page, `${name}: ${part}`).toContain(part);
      }
    }
    const functions = Object.entries(door).filter(([, value]) => typeof value === 'function');
    expect(
      functions.filter(([name]) => !text.has(`api/functions/${name}.html`)).map(([name]) => name),
    ).toEqual([]);
  });

  it('fetch nothing and name no place of this machine', () => {
    expect(pages.length).toBeGreaterThan(100);
    for (const { name, text } of pages.filter((page) => page.name.endsWith('.html'))) {
      expect(
        [...text.matchAll(/(?:src|href)="(?:https?:|\/)[^"]*"/g)].map(([link]) => link),
        name,
      ).toEqual([]);
      expect(text, name).not.toContain(import.meta.dirname.slice(0, import.meta.dirname.indexOf('/test/')));
    }
  });
});
