/** Fruit set by storage: one mark a flower, taken ones first, and below them each rate with its range. */
import type { Markish } from '@observablehq/plot';
import type { Analysis } from '../analyse.ts';
import type { Words } from '../words/languages.ts';
import { headed } from '../words/numbers.ts';
import { RATE_AXIS, storageWords } from '../words/rate-figures.ts';
import type { Figure } from './figure.ts';
import {
  dotLook,
  dotPlaces,
  dotRowsHeight,
  flowersPerMark,
  type Label,
  labels,
  marksFor,
  type RangeRow,
  ranges,
  rateScale,
  SCALE_HEIGHT,
  SMALL_DOT,
  storageColour,
} from './marks.ts';
import { fitted, textWidth } from './names.ts';
import { BOLD_SIZE, drawing, INNER_WIDTH, LINE, type Plot, TEXT_SIZE } from './sheet.ts';

/** What this chart says. */
type StorageWords = Pick<Words, 'storageWords' | 'RATE_AXIS' | 'headed'>;
const ENGLISH: StorageWords = { storageWords, RATE_AXIS, headed };

type StorageRate = Analysis['raw']['byStorage'][number];

interface Block {
  readonly storage: string;
  readonly label: Label;
  readonly top: number;
  readonly took: number;
  readonly failed: number;
}

/** The dot arrays, one below the other, and how high they are together. */
function blocks(
  rates: readonly StorageRate[],
  perMark: number,
  { storageWords: said, headed }: StorageWords,
): { all: Block[]; height: number } {
  let height = 0;
  const all = rates.map(({ storage, fruits, flowers, ...rest }) => {
    const [took, failed] = [marksFor(fruits, perMark), marksFor(flowers - fruits, perMark)];
    const counted = said.took({ fruits, flowers, ...rest });
    const left = INNER_WIDTH - textWidth(headed('', counted), BOLD_SIZE);
    const label = {
      x: 0,
      y: height + LINE / 2,
      text: headed(fitted(said.method(storage), left, BOLD_SIZE), counted),
      colour: storageColour(storage),
      weight: 'bold' as const,
    };
    const block = { storage, label, top: height + LINE, took, failed };
    height += LINE + dotRowsHeight(took + failed) + 6;
    return block;
  });
  return { all, height: height + LINE + 2 };
}

function dotArray(plot: Plot, { storage, top, took, failed }: Block): Markish[] {
  const look = dotLook(storage !== 'fresh', storageColour(storage), storage === 'fresh' ? 4 : 4.2);
  const taken = storage === 'fresh' ? look : { ...look, strokeWidth: 1.6 };
  return [
    plot.dot(dotPlaces(took, { top }), { x: 'x', y: 'y', ...taken }),
    plot.dot(dotPlaces(failed, { top, first: took }), { x: 'x', y: 'y', ...SMALL_DOT }),
  ];
}

const ROW = 2 * LINE;

function rateRows(
  rates: readonly StorageRate[],
  top: number,
  said: Words['storageWords'],
): { rows: RangeRow[]; names: Label[] } {
  const rows = rates.map((one, index) => ({
    ...one,
    y: top + index * ROW + LINE + 7,
    hollow: one.storage !== 'fresh',
    colour: storageColour(one.storage),
  }));
  const names = rates.map((one, index) => ({
    x: 0,
    y: top + index * ROW + LINE / 2,
    text: fitted(isExtreme(one) ? said.extremeLabel(one) : said.rateLabel(one), INNER_WIDTH, TEXT_SIZE),
    colour: storageColour(one.storage),
  }));
  return { rows, names };
}

/** None or all of them: the label says how far it could still be, and no rate. */
function isExtreme({ fruits, flowers }: StorageRate): boolean {
  return fruits === 0 || fruits === flowers;
}

/**
 * Rates by storage of the pollen, raw counts.
 *
 * @param analysis its `raw.byStorage`
 * @param inWords the language's words; English where left out
 * @returns null where no flower has a storage and a known outcome
 * @example
 * storageFigure(analysis)?.table.caption; // 'Fruit set by storage of the pollen'
 */
export function storageFigure(
  { raw }: Pick<Analysis, 'raw'>,
  inWords: StorageWords = ENGLISH,
): Figure | null {
  const said = inWords.storageWords;
  const rates = raw.byStorage.filter(({ flowers }) => flowers > 0);
  if (rates.length === 0) return null;
  const perMark = flowersPerMark(rates.reduce((sum, { flowers }) => sum + flowers, 0));
  const { all, height } = blocks(rates, perMark, inWords);
  const bottom = height + rates.length * ROW + 2;
  const words = { label: said.label, description: said.description(perMark) };
  const note: Label = {
    x: 0,
    y: height - LINE / 2 - 4,
    text: said.marks(perMark),
    colour: 'var(--quiet)',
  };
  const marks = (plot: Plot): Markish[] => {
    const { rows, names } = rateRows(rates, height, said);
    return [
      ...rateScale(plot, height, bottom, inWords.RATE_AXIS),
      ...all.flatMap((block) => dotArray(plot, block)),
      ...ranges(plot, rows),
      ...labels(plot, [...all.map(({ label }) => label), ...names, note]),
    ];
  };
  return {
    kind: 'figure',
    name: 'storage',
    finding: said.finding(rates, perMark),
    ...words,
    table: {
      caption: said.label,
      columns: said.columns.map((title) => ({ title })),
      rows: rates.map(said.cells),
      source: 'raw.byStorage',
    },
    draw: drawing(words, { height: bottom + SCALE_HEIGHT, domain: [0, 1], marks }),
  };
}
