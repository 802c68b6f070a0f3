import { parseHTML } from 'linkedom';
import { beforeAll, describe, expect, it } from 'vitest';
import * as door from '../../lib/index.ts';
import { apiPages } from '../../scripts/api-pages.mjs';

const pages = new Map<string, Document>();
let text = '';
beforeAll(async () => {
  // Null where an export has no comment, or a comment speaks of an argument that is not there.
  const made = (await apiPages()) ?? [];
  for (const { name, text: page } of made) pages.set(name, parseHTML(page).document);
  text = made.map((page) => page.text).join('\n');
}, 240_000);

const section = (name: string): string => {
  const headed = [...pages.values()].flatMap((page) => [...page.querySelectorAll(`h2[id="${name}"]`)]);
  return headed.map((heading) => heading.parentElement?.textContent ?? '').join('');
};

describe('the pages of the library', () => {
  it('tell of each function with its source and example', () => {
    for (const name of ['logistic', 'wilson', 'designColumns', 'standardise', 'betaQuantile'])
      for (const part of ['Returns', 'Throws', 'Source', 'Example'])
        expect(section(name), `${name}: ${part}`).toContain(part);
    expect(section('wilson')).toMatch(
      /wilson\(successes: number, trials: number, options\?: \w+\): Interval/,
    );
    expect(section('wilson')).toContain('n, a whole number of at least 1');
  });

  it('have each public name once, and its parts where it is a type', () => {
    const named = [...pages.entries()].flatMap(([file, page]) =>
      file === 'api/index.html' ? [] : [...page.querySelectorAll('main h2')].map(({ id }) => id),
    );
    expect(new Set(named).size).toBe(named.length);
    expect(named).toEqual(expect.arrayContaining(Object.keys(door)));
    expect(section('Fit')).toContain('p coefficients, in the order of design.names.');
  });

  it('lead to places that are there, back to the site among them', () => {
    const ids = new Map(
      [...pages].map(([file, page]) => [
        file,
        new Set([...page.querySelectorAll('[id]')].map(({ id }) => id)),
      ]),
    );
    const lost = [...pages].flatMap(([file, page]) =>
      [...page.querySelectorAll('a')]
        .map((link) => link.getAttribute('href') ?? '')
        .filter((address) => address !== '../index.html')
        .filter((address) => {
          const [to, id] = address.split('#');
          const there = ids.get(to === '' ? file : `api/${to}`);
          return there === undefined || (id !== undefined && !there.has(id));
        }),
    );
    expect(lost).toEqual([]);
    for (const page of pages.values()) expect(page.querySelector('a[href="../index.html"]')).not.toBeNull();
  });

  it('fetch nothing, run nothing and name no place of this machine', () => {
    expect(pages.size).toBeGreaterThan(5);
    expect(text).not.toMatch(/<script|(?:src|href)="(?:https?:|\/)/);
    expect(text).not.toContain(import.meta.dirname.slice(0, import.meta.dirname.indexOf('/test/')));
  });
});
