import { readdirSync, readFileSync } from 'node:fs';
import { parseHTML } from 'linkedom';
import ts from 'typescript';
import { beforeAll, describe, expect, it } from 'vitest';
import { readNotebook } from '../../lib/notebook/build/cells.ts';
import { translationOf } from '../../lib/notebook/build/translation.ts';
import { renderSite } from '../../lib/notebook/render-site.ts';
import type { Language } from '../../lib/words/language.ts';
import { numeralsIn } from '../words/numerals.ts';
import { SAYINGS } from '../words/sayings.ts';
import { demoAnalysis, seasonsOfAllKinds } from './seasons-of-all-kinds.ts';

/*
 * Every translated page beside the English one, of the demo season and of seasons of all kinds: the same parts with the
 * same numbers in them. Only a native speaker can tell whether the words are well chosen.
 */

type Other = Exclude<Language, 'en'>;
const OTHERS: readonly Other[] = ['de', 'es', 'fr'];

/** The catalogue is in each language's own order, and the start page tells the sizes of files: neither is compared. */
const NOT_COMPARED = /^(?:index|problems)\.html/;
const FOR_STATISTICIANS = /^(?:methods|limitations)\.html/;

interface Read {
  readonly name: string;
  readonly parts: readonly string[];
}

/** Text on one line; the spaces that hold words together stay as they are. */
const textOf = (text: string | null): string =>
  (text ?? '').replaceAll(/[^\S\u00A0\u202F\u2009]+/g, ' ').trim();

/** The parts of a page: a row of a table is one, its cells apart. Headings are prose of the notebook alone. */
function readParts(text: string): string[] {
  const { document } = parseHTML(text);
  const parts =
    'header p:not(.unread), main p, main li, main figcaption, main caption, main tr, svg title, svg desc';
  return [...document.querySelectorAll(parts)]
    .filter((part) => part.closest('.working') === null && part.querySelector('p, li') === null)
    .map((part) =>
      part.localName === 'tr'
        ? [...part.querySelectorAll('th, td')].map((cell) => textOf(cell.textContent)).join(' | ')
        : textOf(part.textContent),
    );
}

/** Of the seasons of all kinds the two that differ most: everything written down, and nothing that took. */
const KINDS: ReadonlySet<string> = new Set(['all columns filled in', 'none that took']);
let all: ReturnType<typeof seasonsOfAllKinds> = [];

/** All pages of all seasons that are in a language, each named with its season. */
async function pagesIn(language: Language, seasons: typeof all): Promise<Read[]> {
  const made: Read[] = [];
  for (const [kind, { season, analysis }] of seasons) {
    const parts = { downloads: [], otherPages: [], invented: false };
    const { files } = await renderSite(season, analysis, parts, [language]);
    const own = files.filter(({ text }) => text.includes(`<html lang="${language}"`));
    made.push(...own.map(({ name, text }) => ({ name: `${name} of ${kind}`, parts: readParts(text) })));
  }
  return made;
}

const pages = new Map<Language, readonly Read[]>();
beforeAll(async () => {
  const hard = seasonsOfAllKinds().filter(([kind]) => KINDS.has(kind));
  all = [['the demo', demoAnalysis()], ...hard];
  for (const language of ['en', ...OTHERS] as const) pages.set(language, await pagesIn(language, all));
}, 400_000);

describe.each(OTHERS)('the pages in %s', (language) => {
  const own = (): readonly Read[] => pages.get(language)!;
  const says = SAYINGS[language];
  /** Parts that growers read, each with its page. */
  const plain = () =>
    own()
      .filter(({ name }) => !FOR_STATISTICIANS.test(name))
      .flatMap(({ name, parts }) => parts.map((text) => ({ name, text })));

  it('are the season review and others of three seasons', () => {
    expect(own().filter(({ name }) => name.startsWith('season-review.html'))).toHaveLength(3);
    expect(own().length).toBeGreaterThan(3 * 7);
    expect(own().flatMap(({ parts }) => parts).length).toBeGreaterThan(1500);
  });

  it('have no gap', () => {
    const gaps = own().flatMap(({ name, parts }) =>
      parts.filter((text) => /undefined|NaN|\[object/.test(text)).map((text) => `${name}: ${text}`),
    );
    expect(gaps).toEqual([]);
  });

  it('tell the numbers of the English pages, part by part', () => {
    const differing = own()
      .filter(({ name }) => !NOT_COMPARED.test(name))
      .flatMap(({ name, parts }) => {
        const english = pages.get('en')!.find((page) => page.name === name)!.parts;
        expect({ name, parts: parts.length }).toEqual({ name, parts: english.length });
        const numbers = (text: string, of: Language) => numeralsIn(text, of).sort().join(' ');
        return parts.flatMap((text, at) =>
          numbers(text, language) === numbers(english[at]!, 'en')
            ? []
            : [`${name}: ${text}\n  beside: ${english[at]}`],
        );
      });
    expect(differing).toEqual([]);
  });

  it('give each rate with its counts, in the same sentence or row', () => {
    const rates = plain().filter(({ text }) => says.rate.test(text));
    expect(rates.length).toBeGreaterThan(50);
    const bare = rates.filter(
      ({ text }) => !says.counts.test(text) && !/geschätzt|estimad|estim/i.test(text),
    );
    expect(bare).toEqual([]);
  });

  it('give each likelihood word its number, right behind it', () => {
    const told = plain().flatMap(({ name, text }) =>
      [...text.matchAll(says.likely)].map(({ index, 0: word }) => ({
        name,
        word,
        after: text.slice(index + word.length),
      })),
    );
    expect(told.length).toBeGreaterThan(20);
    // What heads a list is followed by the number of each entry.
    const inText = told.filter(({ after }) => !/^[^.(\d]{0,20}:$/.test(after));
    expect(inText.filter(({ after }) => !says.numbered.test(after))).toEqual([]);
  });

  it('leave the words of tests to the methods and the limitations', () => {
    expect(plain().filter(({ text }) => says.banned.test(text))).toEqual([]);
  });
});

/*
 * A space before : ; ? ! and inside « », which no line may break at: Imprimerie nationale, Lexique des règles
 * typographiques (from memory). Sources keep the marks of their own language, terms of models and #REF! are typed so.
 */
const TYPED_SO = /^(?:storage|age): |#REF!/g;
const FRENCH_FAULT = /[\p{L}\d%)»][:;?!](?=\s|$)|[^\u00A0\u202F][:;?!»](?=\s|$)|«[^\u00A0\u202F]/gu;

describe('the French pages', () => {
  it('put a space before a colon, a semicolon and the like, at which no line breaks', () => {
    const faultsIn = (text: string) =>
      [...text.replaceAll(TYPED_SO, '').matchAll(FRENCH_FAULT)].map(([fault]) => fault);
    expect(faultsIn('frais: 7 ; non ?')).toEqual(['s:', ' ;', ' ?']);
    expect(faultsIn('frais\u00A0: 7 «\u00A0oui\u00A0» à 12:30\u00A0?')).toEqual([]);
    const faults = pages
      .get('fr')!
      .flatMap(({ name, parts }) => parts.map((text) => ({ name, text })))
      .filter(({ text }) => !text.startsWith('Source') && faultsIn(text).length > 0);
    expect(faults).toEqual([]);
  });

  it('elide before a vowel also where a number’s words come in: « d’environ 8 pour 10 »', () => {
    const parts = pages.get('fr')!.flatMap((page) => page.parts);
    expect(parts.filter((text) => /d’environ \d/.test(text)).length).toBeGreaterThan(2);
    const unelided = /(?<!\p{L})(?:de|que|le|la|se|ne) (?:environ|une?|aucune?|elles?|ils?|on)(?!\p{L})/u;
    expect(parts.filter((text) => unelided.test(text))).toEqual([]);
  });
});

/** Texts of a cell that could be read as prose: two words of three letters or more, markup and formulas aside. */
function proseIn(code: string): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    const formula =
      ts.isCallExpression(node) && /^(?:formula|fraction|squareRoot)$/.test(node.expression.getText(file));
    if (formula || ts.isImportDeclaration(node)) return;
    if (ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node)) {
      const shown = node.text.replaceAll(/<[^>]*>?|^[^<]*>/g, ' ');
      if (/\p{L}{3,}[,;:.]? \p{L}{3,}/u.test(shown)) found.push(shown.trim());
    }
    ts.forEachChild(node, visit);
  };
  const file = ts.createSourceFile('cell.ts', code, ts.ScriptTarget.ESNext, true);
  visit(file);
  return found;
}

describe('a notebook that is translated', () => {
  const folder = new URL('../../reports/', import.meta.url);
  const names = readdirSync(folder).flatMap((name) => translationOf(`reports/${name}`)?.name ?? []);

  it('has no prose in its cells, where no translation could reach it', () => {
    expect(proseIn("const said = 'Nothing took.'; const more = html`<p>${said} They failed</p>`;")).toEqual([
      'Nothing took.',
      'They failed',
    ]);
    const prose = [...new Set(names)].flatMap((name) => {
      const { parts } = readNotebook(
        `reports/${name}.md`,
        readFileSync(new URL(`${name}.md`, folder), 'utf8'),
      );
      return parts
        .flatMap((part) => (part.kind === 'cell' ? proseIn(part.lines.join('\n')) : []))
        .map((text) => `${name}: ${text}`);
    });
    expect(new Set(names).size).toBeGreaterThan(5);
    expect(prose).toEqual([]);
  });
});
