/** The page to explore: a form and charts that show one selection. The only file of it that knows the window. */

import { dataTable } from '../notebook/table.ts';
import type { Words } from '../words/languages.ts';
import { shownKey } from './explore-skeleton.ts';
import { type ChartRow, ROWS } from './explore-spec.ts';
import { type ExploredFlower, unpackFlowers } from './explored-flowers.ts';
import { type Places, placesOf } from './places.ts';
import {
  alone,
  chosenFlowers,
  DIMENSIONS,
  type Dimension,
  everything,
  type Group,
  groupsOf,
  keysOf,
  pairsOf,
  type Selection,
  totalOf,
  withChosen,
} from './selection.ts';

/** The parts of a chart that this page uses. */
interface View {
  readonly data: (name: string, rows: readonly ChartRow[]) => View;
  readonly width: (pixels: number) => View;
  readonly addEventListener: (
    type: 'click',
    act: (event: unknown, item: { readonly datum?: Partial<ChartRow> } | null | undefined) => void,
  ) => View;
  readonly runAsync: () => Promise<unknown>;
}

/** The charts' library, as its packages export it. */
export interface ChartLibrary {
  readonly parse: (specification: object, config: null, options: { readonly ast: true }) => unknown;
  readonly View: new (runtime: unknown, options: object) => View;
  readonly expressionInterpreter: unknown;
}

/** What the page says. */
export type ExploreWords = Pick<
  Words,
  'EXPLORE' | 'choiceLabel' | 'choiceSaid' | 'chosenSaid' | 'countCells' | 'rowCounts'
>;

/** What lies left and right of a chart's rows: its padding, so that the last figure of the axis has room. */
const SIDES = 18;
const WIDEST = 640;

const tenths = (proportion: number | null): number | null => (proportion === null ? null : 10 * proportion);

function chartRow(dimension: Dimension, group: Group, words: ExploreWords): ChartRow {
  const { key, chosen, estimate, lower, upper } = group;
  return {
    key,
    label: shownKey(words, dimension, key),
    counts: words.rowCounts(group),
    chosen,
    estimate: tenths(estimate),
    lower: tenths(lower),
    upper: tenths(upper),
  };
}

/** A chart in its place, whose rows can be clicked. Expressions are interpreted: the page's policy forbids to compile any. */
function openChart(
  library: ChartLibrary,
  specification: object,
  place: HTMLElement,
  clicked: (key: string) => void,
): View {
  const view = new library.View(library.parse(specification, null, { ast: true }), {
    expr: library.expressionInterpreter,
    renderer: 'svg',
    container: place,
    hover: false,
  });
  return view.addEventListener('click', (_, item) => {
    const key = item?.datum?.key;
    if (key !== undefined) clicked(key);
  });
}

/** The form's controls show the selection. */
function showInForm(form: HTMLFormElement, selection: Selection): void {
  for (const box of form.querySelectorAll('input'))
    box.checked = selection.get(box.name as Dimension)?.has(box.value) ?? true;
  for (const list of form.querySelectorAll('select')) {
    const [only = ''] = selection.get(list.name as Dimension) ?? [];
    list.value = only;
  }
}

/** The selection that the form's controls show. */
function readForm(form: HTMLFormElement): Selection {
  let selection = everything;
  for (const dimension of DIMENSIONS) {
    const boxes = [...form.querySelectorAll('input')].filter(({ name }) => name === dimension);
    const checked = boxes.filter((box) => box.checked).map(({ value }) => value);
    if (checked.length < boxes.length) selection = withChosen(selection, dimension, new Set(checked));
  }
  for (const { name, value } of form.querySelectorAll('select'))
    if (value !== '') selection = withChosen(selection, name as Dimension, new Set([value]));
  return selection;
}

function showNumbers(
  { say, fill }: Places,
  flowers: readonly ExploredFlower[],
  selection: Selection,
  words: ExploreWords,
): void {
  const { EXPLORE: said, countCells } = words;
  const chosen = chosenFlowers(flowers, selection);
  const choices = DIMENSIONS.flatMap((dimension) => {
    const keys = selection.get(dimension);
    return keys ? [{ dimension, labels: [...keys].map((key) => shownKey(words, dimension, key)) }] : [];
  });
  say('explore-sentence', words.chosenSaid(totalOf(chosen)));
  say('explore-chosen', words.choiceSaid(choices));
  const byStorage = keysOf(chosen, 'storage').map((key) =>
    countCells(shownKey(words, 'storage', key), totalOf(chosen.filter(({ storage }) => storage === key))),
  );
  const byPair = pairsOf(chosen).map((pair) => countCells(`${pair.seedParent} × ${pair.pollenParent}`, pair));
  const storageTable = countTable(said.storageCaption, said.storageColumns, byStorage);
  const pairTable = countTable(said.pairCaption, said.pairColumns, byPair);
  fill('explore-tables', { ...storageTable, markup: storageTable.markup + pairTable.markup });
}

function countTable(caption: string, titles: readonly string[], rows: readonly (readonly string[])[]) {
  const columns = titles.map((title, index) => ({ title, numeric: index === 1 || index === 2 }));
  return dataTable({ caption, columns, rows, source: 'season.crosses' });
}

/**
 * Starts the page.
 *
 * @param library the charts' library
 * @param specification of the one chart that every dimension is drawn with, compiled
 * @param words of the page's language
 */
export function startExplore(library: ChartLibrary, specification: object, words: ExploreWords): void {
  const places = placesOf(document);
  const flowers = unpackFlowers(places.at('explore-flowers').textContent ?? '');
  const form = places.at<HTMLFormElement>('explore-choices');
  let selection = everything;
  const charts = DIMENSIONS.map((dimension) => {
    const place = places.at(`explore-chart-${dimension}`);
    const view = openChart(library, specification, place, (key) => choose(alone(selection, dimension, key)));
    return { dimension, place, view };
  });
  const draw = () => {
    for (const { dimension, place, view } of charts) {
      const rows = groupsOf(flowers, selection, dimension).map((group) => chartRow(dimension, group, words));
      const width = Math.min(WIDEST, place.clientWidth) - SIDES;
      void view.data(ROWS, rows).width(width).runAsync();
    }
  };
  const show = (next: Selection) => {
    selection = next;
    showNumbers(places, flowers, selection, words);
    draw();
  };
  const choose = (next: Selection) => {
    showInForm(form, next);
    show(next);
  };
  form.addEventListener('change', () => show(readForm(form)));
  form.addEventListener('submit', (event) => event.preventDefault());
  form.addEventListener('reset', (event) => {
    event.preventDefault();
    choose(everything);
  });
  window.addEventListener('resize', draw);
  show(readForm(form));
}
