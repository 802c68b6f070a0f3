/** The one chart of the page to explore: a row a value, its rate as a dot on its range, its counts above. */

/** The data of the chart by name: `ChartRow`s. */
export const ROWS = 'rows';

/** A row of the chart; rates in fruits of ten flowers, null where no flower is left. */
export interface ChartRow {
  readonly key: string;
  readonly label: string;
  readonly counts: string;
  readonly chosen: boolean;
  readonly estimate: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
}

const y = { field: 'key', type: 'nominal', sort: null, axis: null, scale: { padding: 0 } } as const;
const x = (field: string, axis: string) => ({
  field,
  type: 'quantitative',
  scale: { domain: [0, 10] },
  axis: { title: axis, tickCount: 5 },
});
const text = {
  type: 'text',
  baseline: 'middle',
  dy: -10,
  fontSize: 14,
  color: 'currentColor',
  cursor: 'pointer',
} as const;
const paleIfLeftOut = { condition: { test: 'datum.chosen', value: 1 }, value: 0.35 };
const counted = [{ filter: 'isValid(datum.estimate)' }];

/**
 * The chart as a Vega-Lite specification, with the title of its axis in the page's language. Colours follow the page's, none of
 * them means a kind of pollen elsewhere; the width is set where it is shown, so that
 * nothing scrolls sideways. A bar that cannot be seen takes the clicks of a whole row.
 */
export const exploreSpec = (axis: string) => ({
  $schema: 'https://vega.github.io/schema/vega-lite/v6.json',
  data: { name: ROWS, values: [] },
  width: 280,
  height: { step: 42 },
  padding: { left: 8, right: 8, top: 2, bottom: 2 },
  autosize: { type: 'pad' },
  background: 'transparent',
  layer: [
    {
      mark: { type: 'bar', fillOpacity: 0, color: 'currentColor', cursor: 'pointer' },
      encoding: { y, x: { datum: 0, type: 'quantitative' }, x2: { datum: 10 } },
    },
    {
      transform: counted,
      mark: {
        type: 'rule',
        strokeWidth: 3,
        yOffset: 5,
        y2Offset: 5,
        color: 'var(--quiet)',
        cursor: 'pointer',
      },
      encoding: { y, x: x('lower', axis), x2: { field: 'upper' }, opacity: paleIfLeftOut },
    },
    {
      transform: counted,
      mark: { type: 'point', filled: true, size: 110, yOffset: 5, color: 'var(--ink)', cursor: 'pointer' },
      encoding: { y, x: x('estimate', axis), opacity: paleIfLeftOut },
    },
    {
      // The counts stand at the right edge whole, whatever of a long name has to be cut.
      mark: { ...text, align: 'left', limit: { expr: 'width - 90' } },
      encoding: { y, x: { datum: 0, type: 'quantitative' }, text: { field: 'label' } },
    },
    {
      mark: { ...text, align: 'right' },
      encoding: { y, x: { datum: 10, type: 'quantitative' }, text: { field: 'counts' } },
    },
  ],
  config: {
    // Each drawing has one name, of its place in the page; the same numbers stand in the tables.
    aria: false,
    mark: { aria: false },
    font: 'system-ui, sans-serif',
    axis: {
      labelFontSize: 13,
      titleFontSize: 13,
      titleFontWeight: 'normal',
      labelColor: 'currentColor',
      titleColor: 'currentColor',
      gridColor: 'currentColor',
      gridOpacity: 0.15,
      domainColor: 'currentColor',
      tickColor: 'currentColor',
    },
    view: { stroke: null },
  },
});
