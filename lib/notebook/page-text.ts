/** The texts of a finished file as a reader or a program meets them, each with its place. */

/** A text and where it stands. `whole` texts are one cell or one value each: nothing else stands beside them. */
export interface PlacedText {
  readonly text: string;
  /** "line 12", "a cell of line 3" and the like. */
  readonly place: string;
  readonly whole: boolean;
}

const entities: ReadonlyMap<string, string> = new Map([
  ['amp', '&'],
  ['lt', '<'],
  ['gt', '>'],
  ['quot', '"'],
  ['apos', "'"],
  ['nbsp', ' '],
]);

/** Text of markup with its character references resolved. */
function unescaped(markup: string): string {
  return markup.replace(/&(?:#x([0-9a-f]+)|#(\d+)|(\w+));/gi, (all, hex, decimal, name) => {
    const code = hex ? Number.parseInt(hex, 16) : Number(decimal);
    return name === undefined
      ? code <= 0x10ffff
        ? String.fromCodePoint(code)
        : all
      : (entities.get(name) ?? all);
  });
}

/**
 * Text nodes and attribute values. Neighbouring text nodes are also read as one: a chart breaks a long name into lines,
 * each an element of its own.
 */
function markupTexts(markup: string): PlacedText[] {
  const lineAt = lineFinder(markup);
  const attributes = [...markup.matchAll(/<[^>]*>/g)].flatMap((tag) =>
    [...tag[0].matchAll(/=\s*(?:"([^"]*)"|'([^']*)')/g)].map((match) => ({
      text: unescaped(match[1] ?? match[2] ?? ''),
      place: `an attribute of line ${lineAt(tag.index)}`,
      whole: false,
    })),
  );
  const comments = [...markup.matchAll(/<!--(.*?)-->/gs)].map((match) => ({
    text: match[1]!,
    place: `a comment of line ${lineAt(match.index)}`,
    whole: false,
  }));
  const lines = markup.replace(/<[^>]*>/g, (tag) => ` ${tag.replace(/[^\n]/g, '')}`);
  return [...attributes, ...comments, { text: unescaped(lines), place: '', whole: false }];
}

/** The line, 1 the first, of each index of a text. */
function lineFinder(text: string): (index: number) => number {
  const ends = [...text.matchAll(/\n/g)].map(({ index }) => index);
  return (index) => {
    let [low, high] = [0, ends.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (ends[middle]! < index) low = middle + 1;
      else high = middle;
    }
    return low + 1;
  };
}

function jsonTexts(value: unknown, place: string): PlacedText[] {
  if (typeof value === 'string') return [{ text: value, place, whole: true }];
  if (Array.isArray(value)) return value.flatMap((entry, index) => jsonTexts(entry, `${place}[${index}]`));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, entry]) => [
    { text: key, place: `a key of ${place || 'the top'}`, whole: true },
    ...jsonTexts(entry, place === '' ? key : `${place}.${key}`),
  ]);
}

/** The cells of a CSV text of ours: RFC 4180, separated by commas. */
function csvTexts(text: string): PlacedText[] {
  const lineAt = lineFinder(text);
  const cells = text.matchAll(/(?:^|,|\r\n)(?:"((?:[^"]|"")*)"|([^",\r\n]*))/g);
  return [...cells].map((match) => ({
    text: (match[1]?.replaceAll('""', '"') ?? match[2] ?? '').replace(/^\uFEFF/, ''),
    place: `a cell of line ${lineAt(match.index + 2)}`,
    whole: true,
  }));
}

/**
 * The texts of one finished file. JSON, CSV and markup are taken apart by their name's ending; anything else is one text.
 *
 * A text whose `place` is empty keeps the line ends of its file, so that a finding in it can be placed by its line.
 */
export function textsOf({ name, text }: { readonly name: string; readonly text: string }): PlacedText[] {
  const own = { text: name, place: 'its own name', whole: false };
  if (name.endsWith('.json')) return [own, ...jsonTexts(JSON.parse(text), '')];
  if (name.endsWith('.csv')) return [own, ...csvTexts(text)];
  if (/\.(html|svg|xml)$/.test(name)) return [own, ...markupTexts(text)];
  return [own, { text, place: '', whole: false }];
}
