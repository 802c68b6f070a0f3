/** The main charts as Vega-Lite specifications with their numbers inside: for those who draw them anew elsewhere. */

import type { Analysis } from '../analyse.ts';
import { pairsWords, vialsWords } from '../words/choice-figures.ts';
import type { Words } from '../words/languages.ts';
import { ageWords, RATE_AXIS, storageWords } from '../words/rate-figures.ts';
import { countedAges } from './counted-ages.ts';
import { pairsInOrder } from './pairs.ts';
import { vialsInOrder } from './vials.ts';

type SpecificationWords = Pick<
  Words,
  'storageWords' | 'ageWords' | 'pairsWords' | 'vialsWords' | 'RATE_AXIS'
>;
const ENGLISH: SpecificationWords = { storageWords, ageWords, pairsWords, vialsWords, RATE_AXIS };

type Numbers = readonly Readonly<Record<string, unknown>>[];

/** A chart's specification; `name` is its file's, `label` what the chart is called on the pages. */
export interface ChartSpecification {
  readonly name: string;
  readonly label: string;
  readonly specification: Readonly<Record<string, unknown>>;
}

const COUNTS = [
  { field: 'fruits', type: 'quantitative' },
  { field: 'flowers', type: 'quantitative' },
];

/** An end of a range or a rate between 0 and 1, told in fruits of ten flowers as on the pages. */
function share(field: string, title: string): Readonly<Record<string, unknown>> {
  const axis = { title, labelExpr: 'datum.value * 10' };
  return { field, type: 'quantitative', scale: { domain: [0, 1] }, axis };
}

function whole(
  words: { readonly label: string; readonly description: string },
  layer: readonly object[],
): Readonly<Record<string, unknown>> {
  const { label, description } = words;
  return {
    $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
    title: label,
    description,
    width: 320,
    layer,
  };
}

/** A row for each name: its estimate with its range, and what else is marked on the row. */
function ranged(values: Numbers, axis: string, more: readonly object[] = []): readonly object[] {
  const y = { field: 'name', type: 'nominal', sort: null, title: null };
  const data = { values };
  const own = { x2: { field: 'upper' }, y, tooltip: COUNTS };
  return [
    { data, mark: 'rule', encoding: { x: share('lower', axis), ...own } },
    {
      data,
      mark: { type: 'point', filled: true },
      encoding: { x: share('estimate', axis), y, tooltip: COUNTS },
    },
    ...more.map((mark) => ({ data, ...mark })),
  ];
}

function rates({ raw }: Analysis, words: SpecificationWords): readonly ChartSpecification[] {
  const shown = raw.byStorage.filter(({ flowers }) => flowers > 0);
  if (shown.length === 0) return [];
  const values = shown.map(({ storage, fruits, flowers, estimate, lower, upper }) => ({
    ...{ name: words.storageWords.method(storage), fruits, flowers, estimate, lower, upper },
  }));
  const { label, description } = words.storageWords;
  const said = { label, description: description(1) };
  return [{ name: 'rates.vl.json', label, specification: whole(said, ranged(values, words.RATE_AXIS)) }];
}

/** A curve for each stored method, over the counted rates of its ages and of fresh pollen. */
function ages(analysis: Analysis, words: SpecificationWords): readonly ChartSpecification[] {
  const methods = [...new Set(analysis.ageCurve.map(({ storage }) => storage))];
  const shown = methods.flatMap((storage) => {
    const counted = countedAges(analysis, storage);
    return counted === null ? [] : [{ storage, ...counted }];
  });
  return shown.map(({ storage, points, bands }, index) => {
    const x = { type: 'quantitative', title: words.ageWords.axis };
    const curve = points.map(({ ageDays, estimate, lower, upper }) => ({ ageDays, estimate, lower, upper }));
    const tried = bands.map(({ middle, storage: of, fruits, flowers, estimate, lower, upper }) => ({
      ...{ ageDays: middle, name: words.storageWords.method(of), fruits, flowers, estimate, lower, upper },
    }));
    const drawn = (values: Numbers, mark: object | string, y: string, more: object = {}) => ({
      data: { values },
      mark,
      encoding: { x: { field: 'ageDays', ...x }, y: share(y, words.RATE_AXIS), ...more },
    });
    const named = { color: { field: 'name', type: 'nominal', title: null }, tooltip: COUNTS };
    const said = { label: words.ageWords.label(storage), description: words.ageWords.description(storage) };
    const layer = [
      drawn(curve, { type: 'area', opacity: 0.2 }, 'lower', { y2: { field: 'upper' } }),
      drawn(curve, 'line', 'estimate'),
      drawn(tried, 'rule', 'lower', { y2: { field: 'upper' }, ...named }),
      drawn(tried, { type: 'point', filled: true }, 'estimate', named),
    ];
    const name = index === 0 ? 'age.vl.json' : `age-${index + 1}.vl.json`;
    return { name, label: said.label, specification: whole(said, layer) };
  });
}

function pairs(analysis: Analysis, words: SpecificationWords): readonly ChartSpecification[] {
  if (analysis.pairs.length === 0) return [];
  const values = pairsInOrder(analysis.pairs).map(
    ({ seedParent, pollenParent, fruits, flowers, rawRate, estimate, lower, upper, incompatible }) => ({
      name: `${seedParent} × ${pollenParent}`,
      ...{ fruits, flowers, counted: rawRate, estimate, lower, upper, incompatible },
    }),
  );
  const y = { field: 'name', type: 'nominal', sort: null };
  const counted = {
    mark: { type: 'tick', thickness: 2 },
    encoding: { x: share('counted', words.RATE_AXIS), y },
  };
  const layer = ranged(values, words.RATE_AXIS, [counted]);
  const { label } = words.pairsWords;
  return [{ name: 'pairs.vl.json', label, specification: whole(words.pairsWords, layer) }];
}

function vials({ vials: all, worth }: Analysis, words: SpecificationWords): readonly ChartSpecification[] {
  if (all.length === 0) return [];
  const values = vialsInOrder(all).map((vial) => {
    const { fruits, flowers, estimate, lower, upper, verdict, probabilityWorth } = vial;
    return {
      name: words.vialsWords.name(vial),
      ...{ fruits, flowers, estimate, lower, upper, verdict, probabilityWorth },
    };
  });
  const line =
    worth.value === null
      ? []
      : [
          {
            data: { values: [{ worth: worth.value }] },
            mark: { type: 'rule', strokeDash: [4, 2] },
            encoding: { x: share('worth', words.RATE_AXIS) },
          },
        ];
  const layer = ranged(values, words.RATE_AXIS, line);
  const { label } = words.vialsWords;
  return [{ name: 'vials.vl.json', label, specification: whole(words.vialsWords, layer) }];
}

/**
 * Specifications of the charts of rates, ages, pairs and vials: the same numbers, of all pairs and vials, in the same order
 * as in the tables of the charts.
 *
 * @param analysis a season's, or what of it may be shared
 * @param words the language's; English where left out
 */
export function chartSpecifications(
  analysis: Analysis,
  words: SpecificationWords = ENGLISH,
): readonly ChartSpecification[] {
  return [rates, ages, pairs, vials].flatMap((charts) => charts(analysis, words));
}
