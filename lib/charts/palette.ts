/**
 * The colours of pages and charts in both themes, and the arithmetic that shows they can be told apart.
 *
 * Charts write `var(--fresh)` and the like, so that one drawing serves both themes. Accessibility checkers do
 * not see colours inside SVG; the tests work out every contrast instead.
 */

/** One theme: what each colour is for. All hex, sRGB. */
export interface Theme {
  /** Text and lines that carry meaning. */
  readonly ink: string;
  /** The page. */
  readonly paper: string;
  /** Second-rank text; marks of flowers that did not take. */
  readonly quiet: string;
  /** Hairlines and grids: decoration, may be faint. */
  readonly rule: string;
  /** Fresh pollen, filled. */
  readonly fresh: string;
  /** Stored pollen, hollow. */
  readonly stored: string;
  /** Links, thresholds, what the reader should look at. */
  readonly accent: string;
  /** A good state. */
  readonly good: string;
  /** A warning. */
  readonly warn: string;
}

export const light: Theme = {
  ink: '#1c2321',
  paper: '#fdfcf8',
  quiet: '#5a6560',
  rule: '#d8d8cf',
  fresh: '#9a4a00',
  stored: '#1c5fa8',
  accent: '#5b2a86',
  good: '#00695f',
  warn: '#b3260f',
};

export const dark: Theme = {
  ink: '#eeece4',
  paper: '#171b1a',
  quiet: '#a3ada8',
  rule: '#3b4340',
  fresh: '#f2c14e',
  stored: '#7fb4f0',
  accent: '#c9a2ff',
  good: '#55c4b0',
  warn: '#ff9060',
};

function variables(theme: Theme): string {
  return Object.entries(theme)
    .map(([name, colour]) => `--${name}:${colour}`)
    .join(';');
}

/**
 * The colours as CSS variables, for the page's stylesheet: light, dark where the reader's screen asks for it, and
 * always light on paper.
 */
export const paletteCss = `:root{color-scheme:light dark;${variables(light)}}
@media screen and (prefers-color-scheme:dark){:root{${variables(dark)}}}
@media print{:root{color-scheme:light;--paper:#ffffff}}
`;

/** Red, green and blue of `#rrggbb` as linear light, each 0 to 1 (IEC 61966-2-1; WCAG 2.2, "relative luminance"). */
export function linearRgb(hex: string): readonly [number, number, number] {
  if (!/^#[0-9a-f]{6}$/i.test(hex)) {
    throw new RangeError(`linearRgb: hex must be a colour such as #1c2321, got ${hex}`);
  }
  const channel = (start: number): number => {
    const value = Number.parseInt(hex.slice(start, start + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  };
  return [channel(1), channel(3), channel(5)];
}

/** Relative luminance of a colour, 0 (black) to 1 (white). Source: WCAG 2.2, definition "relative luminance". */
export function relativeLuminance(hex: string): number {
  const [red, green, blue] = linearRgb(hex);
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/**
 * Contrast of two colours, 1 to 21: text needs 4.5, marks need 3.
 *
 * Source: WCAG 2.2, definition "contrast ratio", success criteria 1.4.3 and 1.4.11.
 *
 * @param a, b colours as `#rrggbb`
 * @throws RangeError if one of them is not
 * @example contrastRatio('#000000', '#ffffff') // 21
 */
export function contrastRatio(a: string, b: string): number {
  const [high, low] = [relativeLuminance(a), relativeLuminance(b)].sort((x, y) => y - x) as [number, number];
  return (high + 0.05) / (low + 0.05);
}
