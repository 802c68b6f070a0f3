/**
 * Colours. Contrast limits: WCAG 2.2, 1.4.3 (text 4.5) and 1.4.11 (marks 3). Colour blindness: matrices of Machado,
 * Oliveira & Fernandes 2009 at severity 1.0, on linear RGB. Colour distance: CIE 1976 L*a*b*, white point D65.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { exploreSpec } from '../../lib/browser/explore-spec.ts';
import {
  contrastRatio,
  dark,
  light,
  linearRgb,
  paletteCss,
  relativeLuminance,
  type Theme,
} from '../../lib/charts/palette.ts';
import { pageStyle } from '../../lib/notebook/style.ts';

type Triple = readonly [number, number, number];
type Matrix = readonly [Triple, Triple, Triple];

const VISION: readonly (readonly [string, Matrix])[] = [
  [
    'usual',
    [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ],
  ],
  [
    'protanopic',
    [
      [0.152286, 1.052583, -0.204868],
      [0.114503, 0.786281, 0.099216],
      [-0.003882, -0.048116, 1.051998],
    ],
  ],
  [
    'deuteranopic',
    [
      [0.367322, 0.860646, -0.227968],
      [0.280085, 0.672501, 0.047413],
      [-0.01182, 0.04294, 0.968881],
    ],
  ],
  [
    'tritanopic',
    [
      [1.255528, -0.076749, -0.178779],
      [-0.078411, 0.930809, 0.147602],
      [0.004733, 0.691367, 0.3039],
    ],
  ],
];

const SRGB_TO_XYZ: Matrix = [
  [0.4124564, 0.3575761, 0.1804375],
  [0.2126729, 0.7151522, 0.072175],
  [0.0193339, 0.119192, 0.9503041],
];

function times(matrix: Matrix, vector: Triple): Triple {
  return matrix.map(
    (row) => row[0] * vector[0] + row[1] * vector[1] + row[2] * vector[2],
  ) as unknown as Triple;
}

function lab(linear: Triple): Triple {
  const [x, y, z] = times(SRGB_TO_XYZ, linear);
  const root = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const [fx, fy, fz] = [root(x / 0.95047), root(y), root(z / 1.08883)];
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
}

function distance(a: string, b: string, vision: Matrix): number {
  const seen = [a, b].map((hex) =>
    lab(times(vision, linearRgb(hex)).map((v) => Math.min(1, Math.max(0, v))) as unknown as Triple),
  ) as [Triple, Triple];
  return Math.hypot(seen[0][0] - seen[1][0], seen[0][1] - seen[1][1], seen[0][2] - seen[1][2]);
}

const themes: readonly (readonly [string, Theme])[] = [
  ['light', light],
  ['dark', dark],
];

describe('contrast arithmetic', () => {
  it('gives black on white 21 and a colour on itself 1 (WCAG 2.2)', () => {
    expect(contrastRatio('#000000', '#ffffff')).toBeCloseTo(21, 10);
    expect(contrastRatio('#7f7f7f', '#7f7f7f')).toBe(1);
    expect(contrastRatio('#ffffff', '#000000')).toBeCloseTo(21, 10);
  });

  it('knows the grey that just passes on white, #767676 with 4.54 (from memory: WebAIM, contrast examples)', () => {
    expect(contrastRatio('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  });

  it('weighs pure red, green and blue as the standard does', () => {
    expect(['#ff0000', '#00ff00', '#0000ff'].map(relativeLuminance)).toEqual([0.2126, 0.7152, 0.0722]);
  });

  it('throws for what is no six-digit colour', () => {
    expect(() => contrastRatio('red', '#ffffff')).toThrow(
      'linearRgb: hex must be a colour such as #1c2321, got red',
    );
  });
});

describe.each(themes)('the %s theme', (_name, theme) => {
  it.each(['ink', 'quiet', 'fresh', 'stored', 'accent', 'good', 'warn'] as const)(
    '%s is fit for text on the page and on white paper of a print',
    (name) => {
      expect(contrastRatio(theme[name], theme.paper)).toBeGreaterThanOrEqual(4.5);
    },
  );

  it.each(VISION)(
    'keeps fresh from stored, good from warning and accent from both to %s eyes',
    (_vision, matrix) => {
      expect(distance(theme.fresh, theme.stored, matrix)).toBeGreaterThan(30);
      expect(distance(theme.good, theme.warn, matrix)).toBeGreaterThan(30);
      expect(distance(theme.accent, theme.good, matrix)).toBeGreaterThan(30);
      expect(distance(theme.accent, theme.warn, matrix)).toBeGreaterThan(30);
    },
  );
});

describe('the stylesheet text', () => {
  it('holds every colour of both themes, the dark ones on screens only', () => {
    const [before, after] = paletteCss.split('@media screen and (prefers-color-scheme:dark)') as [
      string,
      string,
    ];
    for (const [name, colour] of Object.entries(light)) expect(before).toContain(`--${name}:${colour}`);
    for (const [name, colour] of Object.entries(dark)) expect(after).toContain(`--${name}:${colour}`);
  });

  it('prints on white, where every colour of the light theme still passes', () => {
    expect(paletteCss).toMatch(/@media print\{[^@]*--paper:#ffffff/);
    for (const name of ['ink', 'quiet', 'fresh', 'stored', 'accent', 'good', 'warn'] as const) {
      expect(contrastRatio(light[name], '#ffffff')).toBeGreaterThanOrEqual(4.5);
    }
  });
});

/** Colours that mean something in a drawing; ink, paper and rule are the page's own. */
const MEANING = ['fresh', 'stored', 'accent', 'good', 'warn', 'quiet'] as const;
/** Further apart than this two colours are told apart at a glance (CIE 1976; common practice, no source). */
const APART = 30;

/** Which of two colours that some eyes cannot tell apart are told apart without colour, and by what. */
const OTHERWISE: Readonly<Record<string, string>> = {
  'fresh warn': 'a cross for an incompatible pair, a dot for others; its heading says so',
  'good quiet': 'large and small dots, and a heading or label at each row',
  'quiet stored': 'hollow marks and small dots, with direct labels',
  'accent quiet': 'the mixes with a name are larger and labelled; a line across the chart is no mark',
};

describe('the golden drawings', () => {
  const folder = new URL('../golden/charts/', import.meta.url);
  const drawings = readdirSync(folder)
    .filter((name) => name.endsWith('.svg') && !name.endsWith('-changed.svg'))
    .map((name) => ({ name, text: readFileSync(new URL(name, folder), 'utf8') }));

  it('take every colour from the palette, so that themes and forced colours reach it', () => {
    expect(drawings.length).toBeGreaterThanOrEqual(8);
    const names = Object.keys(light).map((name) => `var(--${name})`);
    const allowed = new Set([...names, 'none', 'currentColor']);
    const painted = drawings.flatMap(({ name, text }) =>
      [...text.matchAll(/(?:fill|stroke|color|stop-color)="([^"]*)"/g)].map(([, colour]) => ({
        name,
        colour,
      })),
    );
    expect(painted.length).toBeGreaterThan(100);
    expect(painted.filter(({ colour }) => !allowed.has(colour!))).toEqual([]);
  });

  it('tell colours that stand in one drawing apart to all eyes, by something else where not by colour', () => {
    const close = new Set<string>();
    for (const { text } of drawings) {
      const used = MEANING.filter((name) => text.includes(`var(--${name})`));
      for (const [i, a] of used.entries())
        for (const b of used.slice(i + 1))
          for (const [, theme] of themes)
            for (const [, matrix] of VISION)
              if (distance(theme[a], theme[b], matrix) <= APART) close.add([a, b].sort().join(' '));
    }
    expect([...close].sort()).toEqual(Object.keys(OTHERWISE).sort());
  });

  // Ratios of marks: WCAG 2.2, 1.4.11. A band is decoration behind its line.
  it('draw no mark fainter than three to one', () => {
    const faint = drawings.flatMap(({ name, text }) =>
      [...text.matchAll(/<(?:g|path|circle|line|rect|text)\b[^>]*>/g)]
        .map(([tag]) => ({ name, tag }))
        .filter(({ tag }) => /\b(?:stroke|fill)-opacity="0?\.[0-4]|\sopacity="0?\.[0-4]/.test(tag)),
    );
    expect(faint.filter(({ name }) => name !== 'age.svg')).toEqual([]);
  });
});

describe('the charts of Explore', () => {
  it('take their colours from the page, and none that means a kind of pollen', () => {
    const text = JSON.stringify(exploreSpec('fruits'));
    expect([...text.matchAll(/var\(--(\w+)\)/g)].map(([, name]) => name).sort()).toEqual(['ink', 'quiet']);
    expect(text).not.toMatch(/#[0-9a-f]{3,8}\b|rgb/i);
  });
});

describe('forced colours', () => {
  it('give every colour of the palette a name of the system', () => {
    const forced = /@media \(forced-colors:active\)\{:root\{([^}]*)\}/.exec(pageStyle)?.[1] ?? '';
    const given = new Map(forced.split(';').map((pair) => pair.trim().split(':') as [string, string]));
    expect([...given.keys()].sort()).toEqual(
      Object.keys(light)
        .map((name) => `--${name}`)
        .sort(),
    );
    // CSS Color 4, system colours. What is drawn and the page must not be the same.
    const system = ['CanvasText', 'Canvas', 'GrayText', 'LinkText'];
    for (const [name, colour] of given) {
      expect(system).toContain(colour);
      expect(colour === 'Canvas').toBe(name === '--paper');
    }
  });
});
